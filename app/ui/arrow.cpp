#include "app/ui/arrow.hpp"

#include <array>
#include <cmath>

namespace mastwise::ui {

void draw_arrow(Canvas& canvas, Point from, Point tip, Color color, float width) {
  const float dx = tip.x - from.x, dy = tip.y - from.y;
  const float length = std::hypot(dx, dy);
  if (length < 1.0f) return;
  const Point along{dx / length, dy / length}, across{-along.y, along.x};
  const float head = 4.0f * width, half = 1.7f * width;
  const Point neck{tip.x - head * along.x, tip.y - head * along.y};
  canvas.line(from, neck, color, width);
  const std::array corners{tip, Point{neck.x + half * across.x, neck.y + half * across.y},
                           Point{neck.x - half * across.x, neck.y - half * across.y}};
  canvas.polygon(corners, color);
}

}  // namespace mastwise::ui
