#pragma once

#include "app/shell/interface.hpp"

#include <SDL.h>

namespace mastwise::shell {

// Gives an SDL event to the interface; true when it was one of fingers, mouse, wheel or keyboard.
// The only file that knows SDL's input.
bool give_input(const SDL_Event& event, Interface& interface, Session& session, Monotonic now);

}  // namespace mastwise::shell
