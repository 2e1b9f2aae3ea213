#pragma once

#include "app/model/intake.hpp"
#include "app/model/logbook_files.hpp"
#include "app/model/stations.hpp"
#include "app/model/sweep.hpp"
#include "app/shared/action.hpp"
#include "core/logbook/record.hpp"

#include <string>
#include <string_view>

// What is measured, written down, imported and exported.
namespace mastwise::act {

// A sweep: readings of the meter at several headings.
struct BeginSweep {
  static constexpr std::string_view kName = "BeginSweep";
  SweepBy by;
};

struct TurnSweep {
  static constexpr std::string_view kName = "TurnSweep";
  double degrees;  // clockwise, seen from above
};

struct SetMeter {
  static constexpr std::string_view kName = "SetMeter";
  double by;
};

struct ReadMeter {
  static constexpr std::string_view kName = "ReadMeter";
  bool nothing;  // no lock at this heading
};

struct NextScale {
  static constexpr std::string_view kName = "NextScale";
};

struct DropReading {
  static constexpr std::string_view kName = "DropReading";
};

// The picture fails at the current heading.
struct MarkEdge {
  static constexpr std::string_view kName = "MarkEdge";
  bool right;  // of the headings with a picture
};

struct KeepSweep {
  static constexpr std::string_view kName = "KeepSweep";
};

struct ForgetCorrection {
  static constexpr std::string_view kName = "ForgetCorrection";
};

// The outcome of a station at this stop.
struct LogOutcome {
  static constexpr std::string_view kName = "LogOutcome";
  StationKey key;
  Outcome outcome;
};

struct NextWeather {
  static constexpr std::string_view kName = "NextWeather";
};

// The logbook as files.
struct AskLogbookFiles {
  static constexpr std::string_view kName = "AskLogbookFiles";
  LogbookTask task;
  std::string path;  // of the file to import
};

struct AskMerge {
  static constexpr std::string_view kName = "AskMerge";
  std::string path;  // of the logbook to merge into this one
};

// The next folder to export to.
struct NextLogbookFolder {
  static constexpr std::string_view kName = "NextLogbookFolder";
};

struct LogbookFilesDone {
  static constexpr std::string_view kName = "LogbookFilesDone";
  LogbookFilesAnswer answer;
};

// All pending writes are on the disk.
struct LogWritten {
  static constexpr std::string_view kName = "LogWritten";
};

// Saves the paper card to a file.
struct SavePaper {
  static constexpr std::string_view kName = "SavePaper";
};

struct PaperSaved {
  static constexpr std::string_view kName = "PaperSaved";
  std::string file;  // empty: saving failed, and the trouble follows
};

// Imports of station and program tables.
struct OpenIntakeFolder {
  static constexpr std::string_view kName = "OpenIntakeFolder";
  std::string path;  // empty: back to the catalog and the start folders
};

struct PickTable {
  static constexpr std::string_view kName = "PickTable";
  std::string path;
};

struct ChooseColumnOf {
  static constexpr std::string_view kName = "ChooseColumnOf";
  std::string part;  // of the table's mapping; empty: stop choosing
};

struct CorrectReading {
  static constexpr std::string_view kName = "CorrectReading";
  std::string part;
  std::string value;
};

struct TakeIn {
  static constexpr std::string_view kName = "TakeIn";
};

struct StopTakingIn {
  static constexpr std::string_view kName = "StopTakingIn";
};

struct IntakeFound {
  static constexpr std::string_view kName = "IntakeFound";
  IntakeAnswer answer;
};

// Ticks a network seen on the station, or unticks it.
struct TickNetwork {
  static constexpr std::string_view kName = "TickNetwork";
  TickedNetwork ticked;
};

// Pins a network for every stop, or unpins it.
struct PinNetwork {
  static constexpr std::string_view kName = "PinNetwork";
  std::string network;
};

}  // namespace mastwise::act

namespace mastwise {

using RecordActions =
    ActionList<act::BeginSweep, act::TurnSweep, act::SetMeter, act::ReadMeter, act::NextScale,
               act::DropReading, act::MarkEdge, act::KeepSweep, act::ForgetCorrection,
               act::LogOutcome, act::NextWeather, act::AskLogbookFiles, act::AskMerge,
               act::NextLogbookFolder, act::LogbookFilesDone, act::LogWritten, act::SavePaper,
               act::PaperSaved, act::OpenIntakeFolder, act::PickTable, act::ChooseColumnOf,
               act::CorrectReading, act::TakeIn, act::StopTakingIn, act::IntakeFound,
               act::TickNetwork, act::PinNetwork>;

}  // namespace mastwise
