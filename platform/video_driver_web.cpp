#include "platform/video_driver.hpp"

namespace mastwise::platform {

// A page has one canvas.
const char* offscreen_video_driver() {
  return nullptr;
}

OpenGl opengl() {
  return {.embedded = true,
          .major = 3,
          .minor = 0,
          .shading_language = "#version 300 es",
          .swizzles = false};
}

}  // namespace mastwise::platform
