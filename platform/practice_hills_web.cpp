#include "platform/practice_hills.hpp"
#include "platform/system_web.hpp"

namespace mastwise::platform {

bool practice_hills_ready() {
  return web_hills_ready() != 0;
}

}  // namespace mastwise::platform
