#include "platform/video_driver.hpp"

namespace mastwise::platform {

const char* offscreen_video_driver() {
  return "offscreen";
}

}  // namespace mastwise::platform
