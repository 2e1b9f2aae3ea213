#include "app/aim/draw_sky.hpp"

#include "app/ui/kite.hpp"
#include "app/words/headings.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

}  // namespace

float draw_sky(Ui& ui, Rect area, Bearing<True> heading, const FromStars& stars) {
  constexpr float kTop = 34.0f, kSky = 110.0f, kBelow = 40.0f;
  constexpr double kTopAltitude_deg = 65.0;
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const float horizon = area.top + kTop + kSky;
  const auto across = [&](Bearing<True> azimuth) {
    const double turn_deg = (azimuth - heading).clockwise_deg();
    return area.center().x + static_cast<float>(turn_deg / 360.0) * area.width();
  };
  canvas.line({area.left, horizon}, {area.right, horizon}, theme.ink, 3.0f);
  const float middle = area.center().x;
  canvas.line({middle, area.top + 8.0f}, {middle, horizon}, theme.rule, 3.0f);
  ui::kite(canvas, {middle, horizon + 18.0f}, 14.0f, theme.ink, true);
  for (int quarter = 0; quarter < 4; ++quarter) {
    const auto side = Bearing<True>::degrees(90.0 * quarter);
    const float x = across(side);
    canvas.line({x, horizon - 8.0f}, {x, horizon}, theme.ink, 3.0f);
    constexpr float kKite = 30.0f;
    if (std::fabs(x - middle) < kKite) continue;
    canvas.text({std::clamp(x, area.left + 12.0f, area.right - 12.0f), horizon + 30.0f},
                words::octant(side), Face::Text, theme.second_ink, Align::Center);
  }
  for (const FromStar& star : stars) {
    const double height = std::clamp(star.altitude_deg / kTopAltitude_deg, 0.0, 1.0);
    const Point at{across(star.azimuth), horizon - static_cast<float>(height) * kSky};
    const std::string name = words::sentence(words::guide_name(star.body));
    const float room = canvas.text_width(name, Face::TextBold) + 18.0f;
    const bool left = at.x + room > area.right;
    canvas.line({at.x, horizon}, at, theme.rule, 2.0f);
    canvas.disc(at, star.body == sky::GuideBody::moon ? 12.0f : 7.0f, theme.ink);
    canvas.text({left ? at.x - 16.0f : at.x + 16.0f, at.y + 8.0f}, name, Face::TextBold, theme.ink,
                left ? Align::Right : Align::Left);
  }
  return horizon + kBelow;
}

}  // namespace mastwise::screens
