#pragma once

#include "app/logbook/files.hpp"
#include "app/logbook/forecast.hpp"
#include "app/shared/settings.hpp"
#include "core/logbook/learning.hpp"
#include "core/logbook/lesson.hpp"
#include "core/logbook/nights.hpp"
#include "core/logbook/record.hpp"
#include "core/logbook/reliability.hpp"

#include <array>
#include <chrono>
#include <cstddef>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace mastwise {

// Records that the shell must write to the logbook.
struct OutcomeTakenBack {
  OutcomeRecord touched;
  bool operator==(const OutcomeTakenBack&) const = default;
};
struct SweepTakenBack {
  std::string id;
  bool operator==(const SweepTakenBack&) const = default;
};
using LogWrite =
    std::variant<StopRecord, OutcomeRecord, SweepRecord, OutcomeTakenBack, SweepTakenBack>;

// While the disk refuses writes, at most this many records wait for it, some weeks of touches. New
// ones are refused then; what was accepted stays.
inline constexpr std::size_t kMostWaiting = 10'000;

// The lessons of the logbook.
struct Taught {
  // By the word for the chance: in both VHF bands, and in UHF.
  std::vector<learning::ReliabilityBin> vhf = {}, uhf = {};
  std::optional<learning::BrierScore> brier = {};
  std::array<learning::Correction, 3> corrections = {};  // by band, for this gear at this stop
  // The same for the rig's other gears.
  std::vector<std::array<learning::Correction, 3>> other_corrections = {};
  std::size_t outcomes = 0;
  std::size_t stops = 0;  // of these outcomes

  // What it was learned for.
  bool practice = false;
  std::string gear = {};
  std::vector<GearChoice> other_gears = {};
  std::optional<std::string> stop_id = {};

  // With any gear of the rig.
  const std::array<learning::Correction, 3>& corrections_with(const GearChoice& gear) const;
  bool operator==(const Taught&) const = default;
};

// The logbook in memory; the shell writes it.
struct Log {
  std::vector<StopRecord> stops = {};        // the latest first
  std::vector<OutcomeRecord> outcomes = {};  // of all stops, the latest first
  std::optional<std::string> stop_id = {};   // the latest within 200 m, if there is one
  Taught taught = {};
  bool operator==(const Log&) const = default;
};

// A stop of the practice area, in memory only.
bool is_practice(const StopRecord& stop);

// The latest stops, for a list.
std::span<const StopRecord> listed_stops(const Log& log);

// What is listed to say what came in.
enum class TriedBy { Networks, Stations };
template <>
inline constexpr std::array kStoredNames<TriedBy> = names({"networks", "stations"});

// A network by its best station, or a station.
struct TriedRow {
  StationRow station;                                   // as last surveyed
  std::string name = {};                                // of the network, or the call sign
  std::string channel = {};                             // virtual; empty if the tables have none
  std::optional<double> forecast_percent = {};          // with the antenna as it points
  std::optional<Outcome> seen = {};                     // at this stop
  std::optional<std::chrono::local_days> seen_on = {};  // if not today
  bool operator==(const TriedRow&) const = default;
};

// The list. Rows stay where they are while the place is shown: what an outcome teaches changes the
// forecasts, but nothing moves under the finger.
struct TriedList {
  std::vector<TriedRow> rows = {};
  LearnedByBand learned = {};  // what the rows were surveyed with
  std::optional<Position> at = {};
  bool practice = false;
  bool operator==(const TriedList&) const = default;
};

// A night as its screens show it.
struct NightShown {
  Night night;
  std::chrono::local_days day = {};  // where it was
  std::optional<Bearing<Magnetic>> on_compass = {};
  bool operator==(const NightShown&) const = default;
};

struct LogbookFound {
  std::vector<NightShown> nights = {};       // before this one within 200 m, the latest first
  std::optional<WorkedHeading> worked = {};  // of these
  std::optional<Bearing<Magnetic>> worked_on_compass = {};
  std::optional<learning::Lesson> lesson = {};
  // Low signals in VHF may be the inverter's noise, unless that is counted.
  bool ask_inverter = false;
  bool operator==(const LogbookFound&) const = default;
};

// The logbook as its screens show it.
struct LogbookState {
  Log log = {};
  std::deque<LogWrite> writes = {};  // not written yet
  std::size_t refused = 0;           // new records, because too many wait
  LogbookFiles files = {};
  std::string weather = {};  // for outcomes

  TriedBy tried_by = TriedBy::Networks;
  TriedList tried = {};

  std::vector<OutcomeRecord> outcomes_here = {};
  std::vector<std::chrono::local_days> days = {};  // of the listed stops, where each was
  LogbookFound found = {};
  bool operator==(const LogbookState&) const = default;
};

}  // namespace mastwise
