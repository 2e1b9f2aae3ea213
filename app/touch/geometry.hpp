#pragma once

#include <algorithm>
#include <cmath>

namespace mastwise::touch {

// A place on the screen or a displacement, in pixels: x to the right, y downward.
struct Point {
  float x = 0.0F;
  float y = 0.0F;
  bool operator==(const Point&) const = default;
};

inline Point operator+(Point a, Point b) {
  return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b) {
  return {a.x - b.x, a.y - b.y};
}
inline Point operator*(Point a, float factor) {
  return {a.x * factor, a.y * factor};
}
inline float length(Point way) {
  return std::hypot(way.x, way.y);
}
inline float distance(Point a, Point b) {
  return length(b - a);
}
inline Point middle(Point a, Point b) {
  return (a + b) * 0.5F;
}
inline bool is_finite(Point point) {
  return std::isfinite(point.x) && std::isfinite(point.y);
}

// Pixels, y downward. It includes the left and top edges but not the right and bottom ones, so that
// only one of two touching rectangles contains a point.
struct Rect {
  float left = 0.0F;
  float top = 0.0F;
  float right = 0.0F;
  float bottom = 0.0F;

  float width() const { return right - left; }
  float height() const { return bottom - top; }
  bool empty() const { return width() <= 0.0F || height() <= 0.0F; }
  Point center() const { return middle({left, top}, {right, bottom}); }

  bool contains(Point point) const {
    return point.x >= left && point.x < right && point.y >= top && point.y < bottom;
  }
  // The area of both; empty() if they do not overlap.
  Rect intersect(const Rect& other) const {
    return {std::max(left, other.left), std::max(top, other.top), std::min(right, other.right),
            std::min(bottom, other.bottom)};
  }
  // Whether they overlap; touching edges do not.
  bool overlaps(const Rect& other) const { return !intersect(other).empty(); }
  // Smaller by `px` on every side, or larger if `px` is negative.
  Rect inset(float px) const { return {left + px, top + px, right - px, bottom - px}; }

  bool operator==(const Rect&) const = default;
};

}  // namespace mastwise::touch
