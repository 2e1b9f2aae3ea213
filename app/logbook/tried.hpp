#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"

// The list of what can come in here, to say what did.
namespace mastwise {

// Brings the list to a complete survey of this stop; without one it stays. `anew`: also its order,
// the likeliest first at the heading that the antenna has; else new rows come last.
void list_tried(LogbookState& state, const Shared& shared, bool anew);

// Empties the list of another place, and marks what was seen at this stop.
void mark_tried(LogbookState& state, const Shared& shared);

// The row of a station in the survey, or else in the list: a survey that is still being measured
// has not all of them. Null if neither has it.
struct SurveyedRow {
  const StationRow* row = nullptr;
  LearnedByBand learned = {};
};
SurveyedRow surveyed_row(const LogbookState& state, const Shared& shared, const StationKey& key);

}  // namespace mastwise
