#pragma once

#include "app/aim/actions.hpp"
#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(AimState& state, Shared& shared, const Action& action);

// Brings the contents of the open sheet up to date.
void derive(AimState& state, const Shared& shared, const World& world);

}  // namespace mastwise
