#pragma once

#include "app/logbook/actions.hpp"
#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature. The practice area's outcomes are never written.
void update(LogbookState& state, Shared& shared, const Action& action);

// Learns again if the gear or the stop is another, and finds the outcomes of this stop and the
// headings that worked at earlier stops within 200 m, and the local days of the listed stops.
void derive(LogbookState& state, const Shared& shared, const World& world);

}  // namespace mastwise
