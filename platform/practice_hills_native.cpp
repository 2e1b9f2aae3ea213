#include "platform/practice_hills.hpp"

namespace mastwise::platform {

bool practice_hills_ready() {
  return true;
}

}  // namespace mastwise::platform
