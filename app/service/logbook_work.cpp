#include "app/service/logbook_work.hpp"

#include "app/service/logbook_files.hpp"
#include "app/words/files.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <filesystem>

namespace mastwise {
namespace {

namespace fs = std::filesystem;
using words::fill;
using words::say;
using Said = Result<std::vector<std::string>>;

struct Form {
  sources::LogbookForm form;
  const char* file_end;
};

Form form_of(LogbookTask task) {
  switch (task) {
    case LogbookTask::GiveWaypoints:
      return {sources::LogbookForm::waypoints, ".gpx"};
    case LogbookTask::GiveBackup:
      return {sources::LogbookForm::backup, ".logbook"};
    case LogbookTask::GiveTable:
    case LogbookTask::Look:
    case LogbookTask::TakeIn:
      break;
  }
  return {sources::LogbookForm::table, ".csv"};
}

std::string counted(std::size_t count, const char* one, const char* many) {
  return count == 1 ? one : fill(many, {{"number", std::to_string(count)}});
}

Said give_out(Logbook& logbook, const LogbookFilesQuestion& question) {
  const auto content = logbook.content();
  if (!content) return content.error();
  const Form form = form_of(question.task);
  const std::string name = "mastwise-logbook-" + question.day + form.file_end;
  const fs::path path = fs::path(question.path) / name;
  const auto written = sources::give_out(logbook, *content, form.form, path.string());
  if (!written) return written.error();
  const sources::LogbookSize size = sources::size_of(*content);
  return std::vector<std::string>{
      fill(say("Written: {file}"), {{"file", name}}),
      fill(say("in {folder}"), {{"folder", question.path}}),
      fill(say("It holds {stops} and {outcomes}"),
           {{"stops", counted(size.stops, say("1 stop"), say("{number} stops"))},
            {"outcomes", counted(size.outcomes, say("1 outcome"), say("{number} outcomes"))}})};
}

Said take_in(Logbook& logbook, const std::string& path) {
  const auto table = sources::read_any_logbook(path);
  if (!table) return table.error();
  const auto report = logbook.merge(table->content);
  if (!report) return report.error();
  std::vector<std::string> said{
      fill(say("Imported: {file}"), {{"file", fs::path(path).filename().string()}})};
  for (std::string& line : words::merged(*report)) said.push_back(std::move(line));
  if (!table->rejected.empty()) {
    said.push_back(fill(say("{number} rows rejected; the first, line {line}: {why}"),
                        {{"number", std::to_string(table->rejected.size())},
                         {"line", std::to_string(table->rejected.front().line)},
                         {"why", table->rejected.front().reason}}));
  }
  return said;
}

Said do_task(const std::string& logbook_path, const LogbookFilesQuestion& question) {
  if (question.task == LogbookTask::Look) return std::vector<std::string>();
  auto logbook = Logbook::open(logbook_path);
  if (!logbook) return logbook.error();
  return question.task == LogbookTask::TakeIn ? take_in(*logbook, question.path)
                                              : give_out(*logbook, question);
}

void list_files(LogbookFilesAnswer& answer, const std::string& own) {
  for (const LogbookFolder& folder : answer.folders) {
    for (const sources::LogbookCandidate& file : sources::logbooks_in(folder.path, own)) {
      answer.files.push_back({.name = fs::path(file.path).filename().string(),
                              .folder = folder.name,
                              .path = file.path,
                              .bytes = file.bytes});
    }
  }
}

LogbookFilesAnswer answer_of(const LogbookFilesSources& sources,
                             const LogbookFilesQuestion& question) {
  LogbookFilesAnswer answer{.question = question};
  if (!sources.logbook_path) {
    answer.trouble = say("Mastwise runs without a logbook");
    return answer;
  }
  auto said = do_task(*sources.logbook_path, question);
  if (said) {
    answer.said = *std::move(said);
  } else {
    answer.trouble = said.error().message();
  }
  answer.folders = sources.folders();
  list_files(answer, *sources.logbook_path);
  return answer;
}

}  // namespace

FilesWorker::Answerer logbook_files_answerer(LogbookFilesSources sources) {
  return [sources = std::move(sources)](const LogbookFilesQuestion& question, const auto&) {
    return answer_of(sources, question);
  };
}

}  // namespace mastwise
