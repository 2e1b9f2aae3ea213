#pragma once

#include "app/model/plan.hpp"
#include "core/logbook/learning.hpp"
#include "core/logbook/logbook.hpp"
#include "core/logbook/record.hpp"
#include "core/logbook/reliability.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace mastwise {

struct Findings;
struct Model;

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

// The lessons of the logbook.
struct Taught {
  std::vector<learning::ReliabilityBin> bins = {};
  std::optional<learning::BrierScore> brier = {};
  std::array<learning::Correction, 3> corrections = {};  // by band, for this gear at this stop
  std::size_t outcomes = 0;
  bool operator==(const Taught&) const = default;
};

// The logbook in memory; the shell writes it.
struct Log {
  std::vector<StopRecord> stops = {};        // the latest first
  std::vector<OutcomeRecord> outcomes = {};  // of all stops, the latest first
  std::optional<std::string> stop_id = {};   // of this stop, once it has a record
  Taught taught = {};
  bool operator==(const Log&) const = default;
};

// A stop of the practice area, in memory only.
bool is_practice(const StopRecord& stop);

// The latest stops, for a list.
std::span<const StopRecord> listed_stops(const Log& log);

// Records a station's outcome here. The practice area's outcomes are never written.
void log_outcome(Model& model, const StationKey& key, Outcome outcome);
// Undoes the last outcome and restores the one before.
void take_back_outcome(Model& model, const OutcomeRecord& touched,
                       const std::optional<OutcomeRecord>& replaced);
// Records the sweep that was just saved.
void log_sweep(Model& model);
void take_back_sweep(Model& model, const std::string& id);

// Learns again from all outcomes, for the gear in use and this stop.
void teach(Model& model);

// The outcomes of this stop, and the headings that worked at earlier stops within 200 m.
void derive_log(const Model& model, Findings& findings);

// The next kind of weather for outcomes; empty after the last.
std::string next_weather(const std::string& weather);

}  // namespace mastwise
