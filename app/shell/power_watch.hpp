#pragma once

#include "core/time.hpp"

#include <functional>
#include <optional>

#include <SDL.h>

namespace mastwise::shell {

// Notices when the tablet's external power goes away. A tablet without a battery, or a system that
// does not tell, never does.
class PowerWatch {
 public:
  // `info`: SDL_GetPowerInfo, or a test's.
  explicit PowerWatch(std::function<SDL_PowerState(int* seconds, int* percent)> info)
      : info_(std::move(info)) {}

  // Whether it went away since the last call; the system is asked every five seconds.
  bool unplugged(Monotonic now) {
    constexpr milliseconds kAskEvery{5'000};
    if (asked_ && now - *asked_ < kAskEvery) return false;
    asked_ = now;
    const SDL_PowerState power = info_(nullptr, nullptr);
    const bool was_plugged = plugged_;
    plugged_ = power == SDL_POWERSTATE_CHARGING || power == SDL_POWERSTATE_CHARGED;
    return was_plugged && power == SDL_POWERSTATE_ON_BATTERY;
  }

 private:
  std::function<SDL_PowerState(int*, int*)> info_;
  std::optional<Monotonic> asked_ = {};
  bool plugged_ = false;
};

}  // namespace mastwise::shell
