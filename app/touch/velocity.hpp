#pragma once

#include "app/touch/geometry.hpp"
#include "core/time.hpp"

#include <deque>

namespace mastwise::touch {

// The speed of a finger at its lift.
class Velocity {
 public:
  // A place of the finger; times do not run backward.
  void add(Point place_px, Monotonic at);

  // Pixels per second over the last 0.1 s before `at`; zero for a finger that rested that long or
  // has less than 8 ms of events. The window is common practice, no source.
  Point at_release(Monotonic at) const;

 private:
  struct Sample {
    Point place_px;
    Monotonic at;
  };
  std::deque<Sample> samples_;
};

}  // namespace mastwise::touch
