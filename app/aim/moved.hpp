#pragma once

#include "app/aim/state.hpp"
#include "app/shared/survey.hpp"

namespace mastwise {

// Aim mentions a change of the aiming tolerance beyond this, degrees. Our choice, no source.
inline constexpr double kToldChange_deg = 10.0;
// A move of at most this far is a short one, meters; at least kSomeSteps_m. Our choices, no source.
inline constexpr double kShortMove_m = 1000.0;
inline constexpr double kSomeSteps_m = 20.0;

// Compares a complete answer with the one of before, if only the place differs, and keeps it.
void follow_move(AimState& state, const StationsAnswer& answer);

}  // namespace mastwise
