#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"

// The records of stops, outcomes and sweeps.
namespace mastwise {

// Records a station's outcome here.
void log_outcome(LogbookState& state, Shared& shared, const StationKey& key, Outcome outcome);
// Undoes the last outcome and restores the one before.
void take_back_outcome(LogbookState& state, const Shared& shared, const OutcomeRecord& touched,
                       const std::optional<OutcomeRecord>& replaced);
void log_sweep(LogbookState& state, Shared& shared, const KeptSweep& kept);
void take_back_sweep(LogbookState& state, const Shared& shared, const std::string& id);

// Learns again from all outcomes, for the gear in use and this stop.
void teach(LogbookState& state, const Shared& shared);

// The latest stop within 200 m of the position in use; empty: none yet.
std::optional<std::string> stop_here(const Log& log, const Shared& shared);

// The outcomes of this stop, as long as it goes on: 24 hours, unless a record was made elsewhere.
std::vector<const OutcomeRecord*> outcomes_of_this_stop(const Log& log, const Shared& shared);

// Fills the outcomes of this place, the latest of each station, the nights before here with the
// heading that worked, the main lesson, and the days of the listed stops.
void derive_log(LogbookState& state, const Shared& shared, const World& world);

// The next kind of weather for outcomes; empty after the last.
std::string next_weather(const std::string& weather);

}  // namespace mastwise
