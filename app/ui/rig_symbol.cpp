#include "app/ui/rig_symbol.hpp"

#include "app/ui/rig_shape.hpp"

#include <algorithm>
#include <vector>

namespace mastwise::ui {

void draw_rig(Canvas& canvas, const Theme& theme, Point center, std::optional<Turn> nose,
              float scale) {
  const float stroke = std::max(2.5f, 4.0f * scale);
  if (!nose) {
    canvas.circle(center, 34.0f * scale, theme.ink, stroke);
    canvas.disc(center, 10.0f * scale, theme.ink);
    return;
  }
  // Along the nose, and across it to the right.
  const Point forward = around({0.0f, 0.0f}, scale, nose->clockwise_deg());
  const auto places = [&](const auto& shape) {
    std::vector<Point> points;
    for (const RigPoint& point : shape) {
      points.push_back({center.x + point.ahead * forward.x - point.right * forward.y,
                        center.y + point.ahead * forward.y + point.right * forward.x});
    }
    return points;
  };
  const std::vector<Point> outline = places(kRigOutline);
  canvas.polygon(outline, theme.paper);
  canvas.polyline(outline, theme.ink, stroke, true);
  canvas.polyline(places(kRigWindscreen), theme.ink, stroke);
  canvas.disc(center, 10.0f * scale, theme.ink);
}

}  // namespace mastwise::ui
