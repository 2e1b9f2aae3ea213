#pragma once

#include "app/logbook/files.hpp"
#include "app/shared/settings.hpp"
#include "core/logbook/learning.hpp"
#include "core/logbook/logbook.hpp"
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
  std::vector<learning::ReliabilityBin> bins = {};
  std::optional<learning::BrierScore> brier = {};
  std::array<learning::Correction, 3> corrections = {};  // by band, for this gear at this stop
  // The same for the rig's other gears.
  std::vector<std::array<learning::Correction, 3>> other_corrections = {};
  std::size_t outcomes = 0;

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

// The logbook as its screens show it.
struct LogbookState {
  Log log = {};
  std::deque<LogWrite> writes = {};  // not written yet
  std::size_t refused = 0;           // new records, because too many wait
  LogbookFiles files = {};
  std::string weather = {};  // for outcomes

  std::vector<OutcomeRecord> outcomes_here = {};
  std::vector<std::chrono::local_days> days = {};  // of the listed stops, where each was
  std::vector<std::string> worked_before = {};     // headings at earlier stops here
  bool operator==(const LogbookState&) const = default;
};

}  // namespace mastwise
