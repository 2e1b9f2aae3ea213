#include "app/aim/draw_protractor.hpp"

#include "app/words/language.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::around;
using ui::Face;
using ui::Point;

}  // namespace

float draw_protractor(ui::Ui& ui, ui::Rect area, const char* line_name, Turn turn) {
  constexpr float kRadius = 96.0f, kAbove = 36.0f, kBelow = 16.0f, kSide = 40.0f;
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const Point center{area.left + kSide + kRadius, area.top + kAbove + kRadius};
  canvas.circle(center, kRadius, theme.ink, 2.0f);
  for (int degrees = 0; degrees < 360; degrees += 10) {
    const float length = degrees % 30 == 0 ? 14.0f : 8.0f;
    canvas.line(around(center, kRadius - length, degrees), around(center, kRadius, degrees),
                theme.ink, degrees % 30 == 0 ? 3.0f : 1.5f);
  }
  canvas.line(center, around(center, kRadius, 0.0), theme.second_ink, 6.0f);
  canvas.text({center.x, center.y - kRadius - 12.0f}, line_name, Face::Text, theme.second_ink,
              Align::Center);
  const double angle_deg = turn.clockwise_deg();
  const float from = static_cast<float>(std::min(0.0, angle_deg)),
              to = static_cast<float>(std::max(0.0, angle_deg));
  canvas.arc(center, 0.5f * kRadius, from, to, theme.accent, 5.0f);
  canvas.line(center, around(center, kRadius - 18.0f, angle_deg), theme.accent, 5.0f);
  const std::array head{around(center, kRadius - 2.0f, angle_deg),
                        around(center, kRadius - 22.0f, angle_deg + 7.0),
                        around(center, kRadius - 22.0f, angle_deg - 7.0)};
  canvas.polygon(head, theme.accent);
  canvas.disc(center, 6.0f, theme.ink);
  canvas.text({center.x + kRadius + 24.0f, center.y + 10.0f},
              words::whole_degrees(std::fabs(angle_deg)), Face::Second, theme.ink);
  canvas.text({center.x + kRadius + 24.0f, center.y + 46.0f},
              angle_deg < 0.0 ? words::say("left") : words::say("right"), Face::TextBold,
              theme.ink);
  return center.y + kRadius + kBelow;
}

}  // namespace mastwise::screens
