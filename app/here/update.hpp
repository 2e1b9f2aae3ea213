#pragma once

#include "app/here/actions.hpp"
#include "app/here/state.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(HereState& state, Shared& shared, const Action& action);

// Brings the contents of the open sheet up to date.
void derive(HereState& state, const Shared& shared);

}  // namespace mastwise
