#pragma once

#include "app/shell/interface.hpp"

#include <SDL.h>

namespace mastwise::shell {

// Passes an SDL event to the interface; true if it is a finger, mouse, wheel or keyboard event.
// The only file that knows SDL's input.
bool give_input(const SDL_Event& event, Interface& interface, Monotonic now);

}  // namespace mastwise::shell
