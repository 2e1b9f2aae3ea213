#pragma once

#include "app/parking/actions.hpp"
#include "app/shared/shared.hpp"

#include <optional>

namespace mastwise {

// Applies an action of this feature.
void update(ParkingState& state, Shared& shared, const Action& action);

// Brings what the open sheet shows up to date.
void derive(ParkingState& state, const Shared& shared);

// The question to the worker; empty without a position. `here`: what the survey asks; `learned`:
// what the logbook teaches about each of rig_gears().
std::optional<GearsQuestion> gears_question(
    const Shared& shared, const StationsQuestion& here,
    std::vector<std::array<reception::LearnedBias, 3>> learned);

// Whether the answer to one question serves the other: a few steps away it still does.
bool same_gears(const GearsQuestion& asked, const GearsQuestion& now);

}  // namespace mastwise
