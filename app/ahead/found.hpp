#pragma once

#include "app/ahead/state.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// What follows from places, comparison and survey of the way.
AheadFound ahead_found(const AheadState& state, const Shared& shared, const World& world);

}  // namespace mastwise
