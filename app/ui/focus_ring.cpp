#include "app/ui/ui.hpp"

#include <algorithm>

namespace mastwise::ui {

// A band of ink between two of paper. So both its edges have the contrast of ink on paper wherever
// it lies, at least 5:1 in every look. WCAG 2.2 asks for 3:1 (1.4.11 Non-text Contrast and 2.4.13
// Focus Appearance; its technique C40 has two bands, which pure red on black is too dim for). It is
// a shape that nothing else has, so color does not tell it alone (1.4.1).
void Ui::draw_focus(const touch::Target* target) {
  constexpr float kBand = 5.0f, kMoat = 3.0f, kOutside = 5.0f, kRadius = 16.0f;
  if (target == nullptr || target->visible_px().empty()) return;
  const float scale = 1.0f / metrics_.px_per_unit;
  const Rect px = target->visible_px();
  const Rect room = screen().inset(0.5f * kBand + kMoat);
  const Rect around = Rect{px.left * scale, px.top * scale, px.right * scale, px.bottom * scale}
                          .inset(-kOutside)
                          .intersect(room);
  canvas_.outline(around, theme_.paper, kBand + 2.0f * kMoat, kRadius);
  canvas_.outline(around, theme_.ink, kBand, kRadius);
}

}  // namespace mastwise::ui
