#include "app/logbook/tasks.hpp"

#include "core/text/iso_time.hpp"

#include <algorithm>

namespace mastwise {
namespace {

// The records in memory only, then the read ones.
void read_again(Log& log, const LogbookRecords& records) {
  std::erase_if(log.outcomes, [&](const OutcomeRecord& outcome) {
    return std::none_of(log.stops.begin(), log.stops.end(), [&](const StopRecord& stop) {
      return is_practice(stop) && stop.id == outcome.stop_id;
    });
  });
  std::erase_if(log.stops, [](const StopRecord& stop) { return !is_practice(stop); });
  log.stops.insert(log.stops.end(), records.stops.begin(), records.stops.end());
  log.outcomes.insert(log.outcomes.end(), records.outcomes.begin(), records.outcomes.end());
}

}  // namespace

void ask_logbook_files(LogbookFiles& files, const Shared& shared, LogbookTask task,
                       const std::string& path) {
  if (files.working()) return;
  LogbookFilesQuestion question{.task = task,
                                .path = path,
                                .day = iso_day(shared.findings.today),
                                .number = files.asked ? files.asked->number + 1 : 1};
  if (task != LogbookTask::Look && task != LogbookTask::TakeIn) {
    if (!files.answer || files.folder >= files.answer->folders.size()) return;
    question.path = files.answer->folders[files.folder].path;
  }
  files.asked = std::move(question);
}

void next_logbook_folder(LogbookFiles& files) {
  if (!files.answer || files.answer->folders.empty()) return;
  files.folder = (files.folder + 1) % files.answer->folders.size();
}

void logbook_files_done(LogbookState& state, const LogbookFilesAnswer& answer) {
  LogbookFiles& files = state.files;
  // The chosen folder may have another index in the new list, or be gone with its stick.
  const std::string chosen = files.answer && files.folder < files.answer->folders.size()
                                 ? files.answer->folders[files.folder].path
                                 : std::string();
  files.answer = answer;
  const auto again = std::find_if(answer.folders.begin(), answer.folders.end(),
                                  [&](const LogbookFolder& one) { return one.path == chosen; });
  files.folder =
      again == answer.folders.end() ? 0 : static_cast<std::size_t>(again - answer.folders.begin());
  if (answer.records) read_again(state.log, *answer.records);
}

}  // namespace mastwise
