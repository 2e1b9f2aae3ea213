#pragma once

#include "app/plan/actions.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(PlanState& state, Shared& shared, const Action& action);

// Brings the table and the list of channels up to date while their sheets are open.
void derive(PlanState& state, const Shared& shared);

}  // namespace mastwise
