#include "app/ui/kite.hpp"

#include <array>

namespace mastwise::ui {

void kite(Canvas& canvas, Point middle, float half_height, Color color, bool filled,
          double turned_deg) {
  const float half_width = 0.78f * half_height;
  const std::array corners{around(middle, half_height, turned_deg),
                           around(middle, half_width, turned_deg + 90.0),
                           around(middle, half_height, turned_deg + 180.0),
                           around(middle, half_width, turned_deg + 270.0)};
  if (filled) {
    canvas.polygon(corners, color);
  } else {
    canvas.polyline(corners, color, 2.8f, true);
  }
}

}  // namespace mastwise::ui
