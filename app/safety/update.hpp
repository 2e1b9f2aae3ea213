#pragma once

#include "app/safety/actions.hpp"
#include "app/safety/state.hpp"
#include "app/shared/shared.hpp"
#include "core/safety/prompts.hpp"

namespace mastwise {

// Applies an action of this feature; comes before what all share, because Undo may be the
// antenna's. Nothing marks the antenna down while the rig moves.
void update(SafetyState& state, Shared& shared, const Action& action);

// Follows the rig's motion: begins and ends the alarm, and asks when the rig stands again.
void derive(SafetyState& state, Shared& shared);

// A change waits to be written, and it is time to try.
bool antenna_to_write(const SafetyState& state, Monotonic now);

// One face covers all screens: the alarm until somebody answers it, or the face under way until a
// passenger unlocks them.
bool screens_locked(const SafetyState& state);

// The alarm sounds at a fifth of its loudness.
bool alarm_is_quiet(const SafetyState& state, Monotonic now);

// The prompt to show; `asking` is not Nothing.
const safety::Prompt& prompt_of(Asking asking);

}  // namespace mastwise
