#pragma once

#include "app/shared/names.hpp"
#include "core/logbook/record.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// Export of the logbook to the user's folders and sticks, and import from them.
namespace mastwise {

enum class LogbookTask { Look, GiveTable, GiveWaypoints, GiveBackup, TakeIn };
template <>
inline constexpr std::array kStoredNames<LogbookTask> =
    names({"look", "give_table", "give_waypoints", "give_backup", "take_in"});

struct LogbookFilesQuestion {
  LogbookTask task = LogbookTask::Look;
  std::string path = {};   // the folder to write to, or the file to import
  std::string day = {};    // "2026-07-02", for the names of files
  std::size_t number = 0;  // a repeated touch is a new question
  bool operator==(const LogbookFilesQuestion&) const = default;
};

struct LogbookFolder {
  std::string name = {};  // its name on the screen
  std::string path = {};
  bool operator==(const LogbookFolder&) const = default;
};

// A file that may be another tablet's logbook.
struct LogbookFile {
  std::string name = {};
  std::string folder = {};  // its name on the screen
  std::string path = {};
  std::uint64_t bytes = 0;
  bool operator==(const LogbookFile&) const = default;
};

// The logbook after an import.
struct LogbookRecords {
  std::vector<StopRecord> stops = {};        // the latest first
  std::vector<OutcomeRecord> outcomes = {};  // the latest first
  bool operator==(const LogbookRecords&) const = default;
};

struct LogbookFilesAnswer {
  LogbookFilesQuestion question = {};
  std::vector<LogbookFolder> folders = {};  // to write to, the default first
  std::vector<LogbookFile> files = {};
  std::vector<std::string> said = {};  // the results
  std::string trouble = {};            // or the failure
  std::optional<LogbookRecords> records = {};
  bool operator==(const LogbookFilesAnswer&) const = default;
};

struct LogbookFiles {
  std::optional<LogbookFilesQuestion> asked = {};
  std::optional<LogbookFilesAnswer> answer = {};
  std::size_t folder = 0;     // index in the answer's folders, to write to
  std::string to_merge = {};  // the file whose prompt is open
  bool working() const { return asked && (!answer || answer->question != *asked); }
  bool operator==(const LogbookFiles&) const = default;
};

}  // namespace mastwise
