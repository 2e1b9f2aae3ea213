#pragma once

#include "app/keypad/actions.hpp"
#include "app/keypad/state.hpp"
#include "app/shared/shared.hpp"

#include <vector>

namespace mastwise {

// Applies an action of this feature: what is accepted goes to the stop, the search or the form.
void update(KeypadState& keypad, Shared& shared, const Action& action);

// The places found for the typed name or, while the worker searches, for a shorter or longer form
// of it; null without such an answer.
const std::vector<places::FoundPlace>* places_found(const Keypad& keypad, const Shared& shared);

}  // namespace mastwise
