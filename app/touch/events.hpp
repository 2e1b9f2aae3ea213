#pragma once

#include "core/time.hpp"

#include <cstdint>
#include <limits>

namespace mastwise::touch {

// The mouse is one more finger. Screens count theirs from zero up, so the least number is free.
inline constexpr std::int64_t kMouse = std::numeric_limits<std::int64_t>::min();

// What a finger or the mouse's main button did. Pixels from the window's upper left corner, y
// downward; they may lie outside the window while a drag goes on. A mouse that moves with no button
// down is no finger: such events need not be fed and are ignored.
struct PointerEvent {
  enum class Kind { Down, Move, Up, Cancel };
  Kind kind = Kind::Cancel;
  std::int64_t finger = kMouse;
  float x_px = 0.0F;
  float y_px = 0.0F;
  Monotonic at;
};

// A mouse wheel turned over a place. `notches` is positive when it turns away from the hand.
struct WheelEvent {
  float x_px = 0.0F;
  float y_px = 0.0F;
  float notches = 0.0F;
  Monotonic at;
};

}  // namespace mastwise::touch
