#pragma once

#include "app/touch/geometry.hpp"

#include <algorithm>

namespace mastwise::touch {

// Whether a line meets a rectangle [Liang and Barsky, A new concept and method for line clipping,
// ACM Transactions on Graphics 3 (1984), from memory].
inline bool line_meets(Point from, Point to, Rect rect) {
  const Point way = to - from;
  float enters = 0.0f, leaves = 1.0f;
  const auto clip = [&](float step, float room) {
    if (step == 0.0f) return room >= 0.0f;
    const float at = room / step;
    if (step < 0.0f) {
      enters = std::max(enters, at);
    } else {
      leaves = std::min(leaves, at);
    }
    return enters <= leaves;
  };
  return clip(-way.x, from.x - rect.left) && clip(way.x, rect.right - from.x) &&
         clip(-way.y, from.y - rect.top) && clip(way.y, rect.bottom - from.y);
}

// On which side of a line a point is: positive, negative, or 0 on it.
inline float side_of(Point from, Point to, Point place) {
  return (to.x - from.x) * (place.y - from.y) - (to.y - from.y) * (place.x - from.x);
}

// Whether two lines cross; not if they only touch.
inline bool lines_cross(Point from, Point to, Point other_from, Point other_to) {
  return side_of(from, to, other_from) * side_of(from, to, other_to) < 0.0f &&
         side_of(other_from, other_to, from) * side_of(other_from, other_to, to) < 0.0f;
}

}  // namespace mastwise::touch
