#include "platform/clock.hpp"

namespace mastwise::platform {

Monotonic monotonic_now() {
  const auto since_start = std::chrono::steady_clock::now().time_since_epoch();
  return Monotonic(std::chrono::duration_cast<milliseconds>(since_start));
}

UtcTime utc_now() {
  return std::chrono::floor<milliseconds>(std::chrono::system_clock::now());
}

}  // namespace mastwise::platform
