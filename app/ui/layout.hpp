#pragma once

#include "app/touch/geometry.hpp"

#include <cstddef>
#include <utility>

namespace mastwise::ui {

using touch::Point;
using touch::Rect;

// Where the parts of the window lie, in units on a grid of 8. On a wide screen the rail of places
// stands on the side away from the acting thumb; on a tall one it lies at the bottom.
struct Layout {
  Rect rail;
  std::pair<Point, Point> rail_rule;  // the edge of the rail
  Rect rail_end;                      // what changes the look
  Rect take_back;  // while there is something to undo; takes the place of rail_end where it must
  Rect body;       // the place in use
  Rect foot;       // a line under the body, for what must stay in sight
  bool rail_lies = false;

  Rect rail_slot(std::size_t index) const;  // index below kPlaceCount
};

constexpr float kRail = 112.0f, kMargin = 24.0f, kFoot = 40.0f;

Layout layout(Rect screen, bool left_handed);

}  // namespace mastwise::ui
