#pragma once

#include "app/touch/geometry.hpp"

#include <cstddef>
#include <utility>

namespace mastwise::ui {

using touch::Point;
using touch::Rect;

// The parts of the window, in units on a grid of 8. On a wide screen the rail of places is on the
// side away from the acting thumb; on a tall one it is at the bottom.
struct Layout {
  Rect rail;
  std::pair<Point, Point> rail_rule;  // the edge of the rail
  Rect rail_end;                      // the switch of day and night
  Rect take_back;  // Undo, if there is something to undo; replaces rail_end without room
  Rect body;       // the current place
  Rect foot;       // a line under the body, for permanent warnings
  bool rail_lies = false;

  Rect rail_slot(std::size_t index) const;  // index below kPlaceCount
};

constexpr float kMargin = 24.0f, kFoot = 40.0f;

// `letters`: how many times larger than usual texts are.
Layout layout(Rect screen, bool left_handed, float letters);

}  // namespace mastwise::ui
