#include "platform/screen.hpp"

namespace mastwise::platform {

// SDL does.
void keep_screen_awake(bool) {}

}  // namespace mastwise::platform
