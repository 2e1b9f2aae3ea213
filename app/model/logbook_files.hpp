#pragma once

#include "core/logbook/record.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// The logbook as files: given out to the user's folders and sticks, taken in from them.
namespace mastwise {

struct Model;

enum class LogbookTask { Look, GiveTable, GiveWaypoints, GiveBackup, TakeIn };

struct LogbookFilesQuestion {
  LogbookTask task = LogbookTask::Look;
  std::string path = {};   // the folder to write into, or the file to take in
  std::string day = {};    // "2026-07-02", for the names of files
  std::size_t number = 0;  // the same touch again is another question
  bool operator==(const LogbookFilesQuestion&) const = default;
};

struct LogbookFolder {
  std::string name = {};  // as a person calls it
  std::string path = {};
  bool operator==(const LogbookFolder&) const = default;
};

// A file that may be another tablet's logbook.
struct LogbookFile {
  std::string name = {};
  std::string folder = {};  // as a person calls it
  std::string path = {};
  std::uint64_t bytes = 0;
  bool operator==(const LogbookFile&) const = default;
};

// What the logbook holds after another has been taken in.
struct LogbookRecords {
  std::vector<StopRecord> stops = {};        // the latest first
  std::vector<OutcomeRecord> outcomes = {};  // the latest first
  bool operator==(const LogbookRecords&) const = default;
};

struct LogbookFilesAnswer {
  LogbookFilesQuestion question = {};
  std::vector<LogbookFolder> folders = {};  // to write into, the usual one first
  std::vector<LogbookFile> files = {};
  std::vector<std::string> said = {};  // what was done
  std::string trouble = {};            // or why not
  std::optional<LogbookRecords> records = {};
  bool operator==(const LogbookFilesAnswer&) const = default;
};

struct LogbookFiles {
  std::optional<LogbookFilesQuestion> asked = {};
  std::optional<LogbookFilesAnswer> answer = {};
  std::size_t folder = 0;     // of the answer's, to write into
  std::string to_merge = {};  // the file whose prompt is open
  bool working() const { return asked && (!answer || answer->question != *asked); }
  bool operator==(const LogbookFiles&) const = default;
};

// Asks before another logbook is merged into this one, which cannot be undone.
void ask_merge(Model& model, const std::string& path);

// One at a time: nothing is asked while the last is being worked on. `path`: the file to take in.
void ask_logbook_files(Model& model, LogbookTask task, const std::string& path = {});
void next_logbook_folder(LogbookFiles& files);
// The practice area's stops, which are in no logbook, stay in mind.
void logbook_files_done(Model& model, const LogbookFilesAnswer& answer);

}  // namespace mastwise
