#include "platform/frames.hpp"

#include <algorithm>
#include <thread>

namespace mastwise::platform {

void run_steps(std::function<bool(Wait)> step) {
  while (step(Wait::until_due)) {
  }
}

bool in_browser() {
  return false;
}

bool has_threads() {
  return true;
}

unsigned computing_threads() {
  return std::max(1U, std::thread::hardware_concurrency());
}

bool has_device_threads() {
  return true;
}

}  // namespace mastwise::platform
