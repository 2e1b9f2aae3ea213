#pragma once

namespace mastwise::platform {

// SDL's driver that draws without a screen; null where a hidden window has to do. One source file
// for each system.
const char* offscreen_video_driver();

}  // namespace mastwise::platform
