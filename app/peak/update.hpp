#pragma once

#include "app/peak/actions.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature. A kept sweep corrects the other headings of the stop.
void update(PeakState& state, Shared& shared, const Action& action);

}  // namespace mastwise
