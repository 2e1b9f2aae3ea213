#include "app/shell/power_watch.hpp"

#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::shell {

TEST_CASE("power: only a change from external power to the battery counts as unplugged") {
  SDL_PowerState power = SDL_POWERSTATE_UNKNOWN;
  int asked = 0;
  PowerWatch watch([&](int*, int*) {
    ++asked;
    return power;
  });
  Monotonic now{};
  const auto after = [&](SDL_PowerState next) {
    power = next;
    now += milliseconds(5'000);
    return watch.unplugged(now);
  };
  CHECK_FALSE(after(SDL_POWERSTATE_ON_BATTERY));
  CHECK_FALSE(after(SDL_POWERSTATE_CHARGING));
  CHECK_FALSE(after(SDL_POWERSTATE_CHARGED));
  CHECK(after(SDL_POWERSTATE_ON_BATTERY));
  CHECK_FALSE(after(SDL_POWERSTATE_ON_BATTERY));
  CHECK_FALSE(after(SDL_POWERSTATE_CHARGED));
  CHECK_FALSE(after(SDL_POWERSTATE_UNKNOWN));
  CHECK_FALSE(after(SDL_POWERSTATE_ON_BATTERY));
  CHECK_FALSE(after(SDL_POWERSTATE_NO_BATTERY));

  // A frame does not ask the system again.
  const int before = asked;
  for (int frame = 0; frame < 100; ++frame) watch.unplugged(now + milliseconds(frame));
  CHECK(asked == before);
}

}  // namespace mastwise::shell
