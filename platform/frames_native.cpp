#include "platform/frames.hpp"

namespace mastwise::platform {

void run_steps(std::function<bool(Wait)> step) {
  while (step(Wait::until_due)) {
  }
}

bool has_threads() {
  return true;
}

}  // namespace mastwise::platform
