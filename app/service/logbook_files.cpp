#include "app/service/logbook_files.hpp"

#include "core/logbook/logbook_gpx.hpp"
#include "platform/atomic_save.hpp"
#include "platform/files.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <span>

namespace mastwise::sources {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kDatabase("SQLite format 3\0", 16);

Result<Done> save(const std::string& path, const std::string& text) {
  return platform::save_atomically(path, std::as_bytes(std::span(text)));
}

template <class Record>
std::size_t live(const std::vector<Record>& records) {
  return static_cast<std::size_t>(std::count_if(
      records.begin(), records.end(), [](const Record& record) { return !record.mark.deleted; }));
}

// The first bytes of a file; fewer if it is shorter or unreadable.
std::string beginning(const fs::path& file) {
  constexpr std::size_t kBytes = 4096;
  std::string bytes(kBytes, '\0');
  std::ifstream stream(file, std::ios::binary);
  stream.read(bytes.data(), static_cast<std::streamsize>(kBytes));
  bytes.resize(static_cast<std::size_t>(stream.gcount()));
  return bytes;
}

bool begins_as_logbook(const fs::path& file) {
  const std::string begins = beginning(file);
  // The first page of such a file names its tables.
  if (begins.starts_with(kDatabase)) {
    return begins.find("CREATE TABLE outcomes (stop_id") != std::string::npos;
  }
  const std::string header = begins.substr(0, begins.find('\n'));
  return header.find("stop_id") != std::string::npos &&
         header.find("stop_latitude") != std::string::npos;
}

}  // namespace

Result<Done> give_out(Logbook& logbook, const LogbookContent& content, LogbookForm form,
                      const std::string& path) {
  switch (form) {
    case LogbookForm::table:
      return save(path, logbook_csv(content));
    case LogbookForm::waypoints:
      return save(path, logbook_gpx(content));
    case LogbookForm::backup:
      return logbook.back_up(path);
  }
  return Done{};
}

LogbookSize size_of(const LogbookContent& content) {
  return {live(content.stops), live(content.outcomes), live(content.sweeps)};
}

Result<LogbookTable> read_any_logbook(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  if (text->starts_with(kDatabase)) {
    auto content = read_logbook(path);
    if (!content) return content.error();
    return LogbookTable{.content = *std::move(content)};
  }
  auto table = read_logbook_csv(*text);
  if (table) return table;
  Error error = table.error();
  error.where = error.where.empty() ? path : path + ", " + error.where;
  return error;
}

std::vector<LogbookCandidate> logbooks_in(const std::string& folder, const std::string& own) {
  std::vector<LogbookCandidate> found;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end;
       entry.increment(trouble)) {
    std::error_code ignored;
    if (!entry->is_regular_file(ignored) || fs::equivalent(entry->path(), own, ignored)) continue;
    // The copy of the day before has nothing new.
    if (entry->path() == own + ".backup" || !begins_as_logbook(entry->path())) continue;
    found.push_back({.path = entry->path().string(), .bytes = entry->file_size(ignored)});
  }
  std::sort(found.begin(), found.end(),
            [](const auto& a, const auto& b) { return a.path < b.path; });
  return found;
}

}  // namespace mastwise::sources
