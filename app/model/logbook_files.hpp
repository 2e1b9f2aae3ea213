#pragma once

#include "core/logbook/record.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// Export of the logbook to the user's folders and sticks, and import from them.
namespace mastwise {

struct Model;

enum class LogbookTask { Look, GiveTable, GiveWaypoints, GiveBackup, TakeIn };

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

// Asks before another logbook is merged into this one, which cannot be undone.
void ask_merge(Model& model, const std::string& path);

// Starts a task unless one is running. `path`: the file to import.
void ask_logbook_files(Model& model, LogbookTask task, const std::string& path = {});
void next_logbook_folder(LogbookFiles& files);
// Keeps the practice area's stops, which no logbook has, in memory.
void logbook_files_done(Model& model, const LogbookFilesAnswer& answer);

}  // namespace mastwise
