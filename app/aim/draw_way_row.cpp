#include "app/aim/actions.hpp"
#include "app/aim/draw_answer.hpp"
#include "app/ui/choice.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::screens {
namespace {

using ui::around;
using ui::Canvas;
using ui::Color;
using ui::Point;
using ui::Rect;

constexpr float kStroke = 3.0f;

void compass_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  canvas.circle(c, 20.0f, color, kStroke);
  const std::array needle{around(c, 14.0f, 40), around(c, 5.0f, 130), around(c, 14.0f, 220),
                          around(c, 5.0f, 310)};
  canvas.polyline(needle, color, 2.5f, true);
}

// The sun, a plumb line and its shadow.
void sun_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  const Point sun{c.x - 14.0f, c.y - 12.0f};
  canvas.disc(sun, 6.0f, color);
  for (int ray = 0; ray < 360; ray += 45) {
    canvas.line(around(sun, 8.5f, ray), around(sun, 12.0f, ray), color, 2.0f);
  }
  canvas.line({c.x + 6.0f, c.y - 20.0f}, {c.x + 6.0f, c.y + 10.0f}, color, 2.5f);
  canvas.disc({c.x + 6.0f, c.y + 12.0f}, 5.0f, color);
  canvas.line({c.x + 6.0f, c.y + 18.0f}, {c.x + 28.0f, c.y + 10.0f}, color, 4.0f);
}

// The rig from above and a way off its side.
void rig_picture(Canvas& canvas, Rect room, Color color) {
  const Point c{room.center().x - 12.0f, room.center().y};
  const std::array body{Point{c.x - 9.0f, c.y + 20.0f}, Point{c.x - 9.0f, c.y - 10.0f},
                        Point{c.x - 5.0f, c.y - 18.0f}, Point{c.x, c.y - 21.0f},
                        Point{c.x + 5.0f, c.y - 18.0f}, Point{c.x + 9.0f, c.y - 10.0f},
                        Point{c.x + 9.0f, c.y + 20.0f}};
  canvas.polyline(body, color, kStroke, true);
  canvas.line(c, {c.x + 28.0f, c.y}, color, kStroke);
  const std::array head{Point{c.x + 37.0f, c.y}, Point{c.x + 26.0f, c.y - 7.0f},
                        Point{c.x + 26.0f, c.y + 7.0f}};
  canvas.polygon(head, color);
}

void landmark_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  const std::array hills{Point{c.x - 26.0f, c.y + 16.0f}, Point{c.x - 8.0f, c.y - 16.0f},
                         Point{c.x + 3.0f, c.y + 2.0f}, Point{c.x + 11.0f, c.y - 6.0f},
                         Point{c.x + 26.0f, c.y + 16.0f}};
  canvas.polyline(hills, color, kStroke, true);
}

// The crank under the ceiling.
void handle_picture(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  canvas.line({c.x - 24.0f, c.y - 18.0f}, {c.x + 24.0f, c.y - 18.0f}, color, 4.0f);
  canvas.line({c.x, c.y - 18.0f}, {c.x, c.y - 2.0f}, color, 5.0f);
  canvas.fill({c.x - 14.0f, c.y - 4.0f, c.x + 14.0f, c.y + 5.0f}, color, 4.0f);
  canvas.arc({c.x, c.y - 4.0f}, 22.0f, 125.0f, 235.0f, color, kStroke);
  const Point tip = around({c.x, c.y - 4.0f}, 22.0f, 120.0);
  const std::array head{Point{tip.x + 4.0f, tip.y - 8.0f}, Point{tip.x + 6.0f, tip.y + 5.0f},
                        Point{tip.x - 7.0f, tip.y}};
  canvas.polygon(head, color);
}

struct Way {
  const char* key;
  PointingMethod method;
  void (*picture)(Canvas&, Rect, Color);
};
constexpr std::array kWays{
    Way{"compass", PointingMethod::baseplate_compass, compass_picture},
    Way{"sun", PointingMethod::sun_shadow, sun_picture},
    Way{"rig", PointingMethod::rig_sides, rig_picture},
    Way{"landmark", PointingMethod::landmark, landmark_picture},
    Way{"handle", PointingMethod::handle, handle_picture},
};

// A compass of any kind is the compass; a way without a picture fills none.
std::optional<std::size_t> chosen_way(PointingMethod method) {
  using enum PointingMethod;
  if (method == sighting_compass || method == set_compass || method == tablet_magnetometer)
    return 0;
  const auto found = std::find_if(kWays.begin(), kWays.end(),
                                  [&](const Way& way) { return way.method == method; });
  if (found == kWays.end()) return std::nullopt;
  return static_cast<std::size_t>(found - kWays.begin());
}

}  // namespace

void draw_way_row(ui::Ui& ui, Rect rect, const Shared& shared) {
  std::vector<ui::Option> options;
  for (const Way& way : kWays) options.push_back({way.key, "", way.picture});
  const auto touched = ui::segmented(ui, "by", rect, options, chosen_way(shared.settings.pointing));
  if (touched) ui.emit(act::ChoosePointing{kWays[*touched].method});
}

}  // namespace mastwise::screens
