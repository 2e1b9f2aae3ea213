#include "platform/screen.hpp"

namespace mastwise::platform {

// SDL does.
void keep_screen_awake(bool) {}

void offer(SideButtons) {}

void darken_surroundings(bool) {}

}  // namespace mastwise::platform
