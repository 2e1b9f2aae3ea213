#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/action.hpp"
#include "app/shared/plan.hpp"
#include "core/logbook/record.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace mastwise::act {

// The outcome of a station at this stop.
struct LogOutcome {
  static constexpr std::string_view kName = "LogOutcome";
  static constexpr auto kFields = fields("key", "outcome");
  StationKey key;
  Outcome outcome;
};

struct ListTried {
  static constexpr std::string_view kName = "ListTried";
  static constexpr auto kFields = fields("by");
  TriedBy by;
};

// Undoes LogOutcome.
struct OutcomeBack {
  static constexpr std::string_view kName = "OutcomeBack";
  static constexpr auto kFields = fields("touched", "replaced");
  OutcomeRecord touched;
  std::optional<OutcomeRecord> replaced;
};

// Undoes SweepKept.
struct SweepBack {
  static constexpr std::string_view kName = "SweepBack";
  static constexpr auto kFields = fields("id");
  std::string id;
};

struct NextWeather {
  static constexpr std::string_view kName = "NextWeather";
};

// The logbook as files.
struct AskLogbookFiles {
  static constexpr std::string_view kName = "AskLogbookFiles";
  static constexpr auto kFields = fields("task", "path");
  LogbookTask task;
  std::string path;  // of the file to import
};

// Asks before another logbook is merged into this one, which cannot be undone.
struct AskMerge {
  static constexpr std::string_view kName = "AskMerge";
  static constexpr auto kFields = fields("path");
  std::string path;
};

// The next folder to export to.
struct NextLogbookFolder {
  static constexpr std::string_view kName = "NextLogbookFolder";
};

struct LogbookFilesDone {
  static constexpr std::string_view kName = "LogbookFilesDone";
  static constexpr auto kFields = fields("answer");
  LogbookFilesAnswer answer;
};

// The first of the pending writes is on the disk.
struct LogWritten {
  static constexpr std::string_view kName = "LogWritten";
};

}  // namespace mastwise::act

namespace mastwise {

using LogbookActions = ActionList<act::LogOutcome, act::ListTried, act::OutcomeBack, act::SweepBack,
                                  act::NextWeather, act::AskLogbookFiles, act::AskMerge,
                                  act::NextLogbookFolder, act::LogbookFilesDone, act::LogWritten>;

}  // namespace mastwise
