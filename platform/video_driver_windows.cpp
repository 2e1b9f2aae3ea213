#include "platform/video_driver.hpp"

namespace mastwise::platform {

// Windows draws with OpenGL in windows only.
const char* offscreen_video_driver() {
  return nullptr;
}

}  // namespace mastwise::platform
