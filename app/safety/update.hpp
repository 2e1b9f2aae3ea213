#pragma once

#include "app/safety/actions.hpp"
#include "app/safety/state.hpp"
#include "core/safety/prompts.hpp"

#include <optional>
#include <string>

namespace mastwise {

// What this feature needs to know of the rest.
struct SafetyContext {
  Monotonic now;
  UtcTime when;
  std::optional<Position> place = {};  // of the rig; nothing in the practice area, which is nowhere
  std::optional<double> speed_kmh = {};  // over ground, from a fresh fix
};

struct SafetyAnswer {
  std::optional<std::string> trouble = {};  // to show; an empty text clears what is shown
  Asking confirmed = Asking::Nothing;       // a prompt of another feature that was confirmed
};

// Applies an action of this feature; nothing if it is another's.
std::optional<SafetyAnswer> update(SafetyState& state, const SafetyContext& context,
                                   const Action& action);

// Undoes the last change of the antenna, and writes that too. What would mark the antenna down asks
// first. Nothing marks it down while the rig moves.
SafetyAnswer undo_antenna(SafetyState& state, const SafetyContext& context);

// Opens a prompt.
void ask(SafetyState& state, Asking what);

// A change waits to be written, and it is time to try.
bool antenna_to_write(const SafetyState& state, Monotonic now);

// Follows the rig's motion: begins and ends the alarm, and asks when the rig stands again.
void follow_motion(SafetyState& state, const SafetyContext& context);

// The alarm sounds at a fifth of its loudness.
bool alarm_is_quiet(const SafetyState& state, Monotonic now);

// The prompt to show; `asking` is not Nothing.
const safety::Prompt& prompt_of(Asking asking);

}  // namespace mastwise
