#pragma once

namespace mastwise::platform {

// Keeps the screen on, where SDL does not. One source file for each kind of system.
void keep_screen_awake(bool awake);

}  // namespace mastwise::platform
