#pragma once

#include "core/time.hpp"

#include <cstdint>
#include <limits>

namespace mastwise::touch {

// The mouse is one more finger. Screens count fingers from zero, so the lowest number is free.
inline constexpr std::int64_t kMouse = std::numeric_limits<std::int64_t>::min();

// An event of a finger or the mouse's main button. Pixels from the window's upper left corner, y
// downward; they may be outside the window during a drag. A mouse without a pressed button is not a
// finger: such events are ignored.
struct PointerEvent {
  enum class Kind { Down, Move, Up, Cancel };
  Kind kind = Kind::Cancel;
  std::int64_t finger = kMouse;
  float x_px = 0.0F;
  float y_px = 0.0F;
  Monotonic at;
};

// A mouse wheel turned at a place. `notches` is positive when it turns away from the hand.
struct WheelEvent {
  float x_px = 0.0F;
  float y_px = 0.0F;
  float notches = 0.0F;
  Monotonic at;
};

}  // namespace mastwise::touch
