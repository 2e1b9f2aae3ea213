#include "platform/video_driver.hpp"

namespace mastwise::platform {

OpenGl opengl() {
  return {};
}

}  // namespace mastwise::platform
