#pragma once

#include "app/data/actions.hpp"
#include "app/shared/shared.hpp"

namespace mastwise {

// Applies an action of this feature.
void update(Intake& intake, Shared& shared, const Action& action);

// Brings what the sheet shows up to date while it is open.
void derive(Intake& intake, Shared& shared);

}  // namespace mastwise
