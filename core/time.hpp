#pragma once

#include <chrono>

namespace mastwise {

using std::chrono::milliseconds;

inline constexpr milliseconds kOneDay = std::chrono::hours(24);

// A calendar date and time, UTC.
using UtcTime = std::chrono::sys_time<milliseconds>;

// A clock that only runs forward, from an arbitrary start. Core never reads it: the caller passes
// its time, so that a log can be replayed and a test can wait an hour at once.
struct MonotonicClock {
  using duration = milliseconds;
  using rep = duration::rep;
  using period = duration::period;
  using time_point = std::chrono::time_point<MonotonicClock>;
  static constexpr bool is_steady = true;
};
using Monotonic = MonotonicClock::time_point;

}  // namespace mastwise
