#pragma once

#include "app/plan/actions.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(PlanState& state, Shared& shared, const Action& action);

// Brings the list of channels up to date while its sheet is open.
void derive(PlanState& state, const Shared& shared);

}  // namespace mastwise
