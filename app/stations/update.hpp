#pragma once

#include "app/shared/shared.hpp"
#include "app/stations/actions.hpp"
#include "app/stations/state.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(StationsState& state, Shared& shared, const Action& action);

// Finds the listed rows of the stations' answer, their networks, the wanted networks, and the
// caution on the age of their tables.
void derive(StationsState& state, Shared& shared);

}  // namespace mastwise
