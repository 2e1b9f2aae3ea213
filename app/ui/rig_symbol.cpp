#include "app/ui/rig_symbol.hpp"

#include <algorithm>
#include <array>

namespace mastwise::ui {

void draw_rig(Canvas& canvas, const Theme& theme, Point centre, std::optional<Turn> nose,
              float scale) {
  const float stroke = std::max(2.5f, 4.0f * scale);
  if (!nose) {
    canvas.circle(centre, 34.0f * scale, theme.ink, stroke);
    canvas.disc(centre, 10.0f * scale, theme.ink);
    return;
  }
  // Along the nose, and across it to the right.
  const Point forward = around({0.0f, 0.0f}, scale, nose->clockwise_deg());
  const auto place = [&](float ahead, float right) {
    return Point{centre.x + ahead * forward.x - right * forward.y,
                 centre.y + ahead * forward.y + right * forward.x};
  };
  const std::array outline{place(-80, -26), place(-72, -34), place(48, -34), place(64, -28),
                           place(76, -15),  place(85, 0),    place(76, 15),  place(64, 28),
                           place(48, 34),   place(-72, 34),  place(-80, 26)};
  canvas.polygon(outline, theme.paper);
  canvas.polyline(outline, theme.ink, stroke, true);
  const std::array windscreen{place(50, -20), place(56, -10), place(58, 0), place(56, 10),
                              place(50, 20)};
  canvas.polyline(windscreen, theme.ink, stroke);
  canvas.disc(centre, 10.0f * scale, theme.ink);
}

}  // namespace mastwise::ui
