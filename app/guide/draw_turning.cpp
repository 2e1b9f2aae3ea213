#include "app/guide/draw_pictures.hpp"
#include "app/ui/rig_side.hpp"
#include "app/ui/texture.hpp"
#include "core/gear/pattern.hpp"

#include <cmath>

// Aim, Peak and the roof.
namespace mastwise::screens {
namespace {

// Five ways to point: compass, shadow of a plumb line, rig, landmark, ceiling handle.
void ways(Sketch& s) {
  const auto& t = s.theme();
  const auto card = [&](float x, float y, bool chosen) {
    const Rect rect{x - 42.0f, y - 42.0f, x + 42.0f, y + 42.0f};
    if (chosen) s.fill(rect, t.ink, 12.0f);
    if (!chosen) s.outline(rect, t.rule, 3.0f, 12.0f);
  };
  card(-94.0f, -58.0f, true);
  s.circle({-94.0f, -58.0f}, 27.0f, t.paper, 4.0f);
  s.polygon({{-88.0f, -52.0f}, {-81.0f, -76.0f}, {-100.0f, -64.0f}}, t.paper);
  s.lines({{-100.0f, -64.0f}, {-107.0f, -40.0f}, {-88.0f, -52.0f}}, t.paper, 3.0f);
  card(0.0f, -58.0f, false);
  s.disc({20.0f, -82.0f}, 9.0f, t.accent);
  s.line({-2.0f, -88.0f}, {-2.0f, -44.0f}, t.accent, 4.0f);
  s.disc({-2.0f, -40.0f}, 7.0f, t.accent);
  s.line({-2.0f, -32.0f}, {-32.0f, -26.0f}, t.accent, 6.0f);
  card(94.0f, -58.0f, false);
  s.rig({80.0f, -58.0f}, 0.0, 58.0f);
  s.arrow({94.0f, -58.0f}, {130.0f, -58.0f}, t.accent, 5.0f);
  card(-47.0f, 46.0f, false);
  s.lines({{-84.0f, 68.0f}, {-56.0f, 26.0f}, {-44.0f, 42.0f}, {-34.0f, 32.0f}, {-12.0f, 68.0f}},
          t.accent, 4.0f, true);
  card(47.0f, 46.0f, false);
  s.line({12.0f, 24.0f}, {82.0f, 24.0f}, t.accent, 5.0f);
  s.line({47.0f, 24.0f}, {47.0f, 48.0f}, t.accent, 6.0f);
  s.line({22.0f, 50.0f}, {72.0f, 50.0f}, t.accent, 9.0f);
  s.turn({47.0f, 40.0f}, 34.0f, 120.0f, 222.0f, t.accent);
}

// The antenna's arrow comes round to the number.
void to_number(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-20.0f, 22.0f};
  s.dial(center, 92.0f);
  s.kite({center.x, center.y - 62.0f}, 12.0f, false);
  s.rig(center, 300.0, 78.0f);
  const Point old = ui::around(center, 84.0f, 106.0);
  s.line(center, old, t.rule, 6.0f);
  s.antenna(center, 40.0, 88.0f);
  s.turn(center, 106.0f, 104.0f, 46.0f, t.accent);
  s.text({96.0f, -72.0f}, "24°", Face::Second, t.ink);
}

// The arrow may stop anywhere in the arc.
void within_arc(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-12.0f, 34.0f};
  constexpr float kFrom = -38.0f, kTo = 62.0f;
  s.arc(center, 104.0f, kFrom, kTo, t.accent, 16.0f);
  s.dial(center, 88.0f);
  for (const double aside : {-30.0, 54.0}) {
    s.arrow(center, ui::around(center, 86.0f, aside), t.rule, 7.0f);
  }
  s.rig(center, 0.0, 74.0f);
  s.antenna(center, 12.0, 86.0f);
  const std::array ends{ui::around(center, 138.0f, kFrom), ui::around(center, 138.0f, kTo)};
  s.text({ends[0].x, ends[0].y + 9.0f}, "50°", Face::TextBold, t.accent);
  s.text({ends[1].x, ends[1].y + 9.0f}, "50°", Face::TextBold, t.accent);
}

// The rig, its antenna to be raised, and a line overhead.
void look_up(Sketch& s) {
  const auto& t = s.theme();
  ui::RigProfile rig;
  rig.ground = s.at(-52.0f, 104.0f);
  rig.units_per_m = s.size(20.0f);
  rig.antenna = ui::RigProfile::Antenna::ToBeRaised;
  rig.raised_m = 6.0f;
  rig.ink = t.ink;
  rig.body = t.paper;
  rig.glass = t.panel;
  s.line({-138.0f, 104.0f}, {138.0f, 104.0f}, t.ink, 4.0f);
  ui::draw_rig_side(s.ui().canvas(), rig);
  const Point wire{72.0f, -56.0f};
  s.line({84.0f, 104.0f}, {84.0f, -72.0f}, t.ink, 8.0f);
  s.line({56.0f, -46.0f}, {112.0f, -46.0f}, t.ink, 6.0f);
  for (int part = 0; part < 36; ++part) {
    const float from = 10.0f * static_cast<float>(part);
    s.arc(wire, 60.0f, from, from + 6.0f, t.warning, 4.0f);
  }
  s.disc(wire, 8.0f, t.warning);
}

// A meter's picture on a TV, and what turns the antenna.
void meter(Sketch& s) {
  const auto& t = s.theme();
  s.tv({-136.0f, -76.0f, 10.0f, 26.0f});
  s.text({-63.0f, -22.0f}, "58", Face::Second, t.ink);
  s.outline({-116.0f, -8.0f, -10.0f, 12.0f}, t.ink, 3.0f, 4.0f);
  s.fill({-116.0f, -8.0f, -54.0f, 12.0f}, t.ink, 4.0f);
  s.circle({82.0f, -56.0f}, 40.0f, t.ink, 4.0f);
  s.kite({82.0f, -56.0f}, 26.0f, false, 24.0);
  const Point handle{82.0f, 62.0f};
  s.line({handle.x - 46.0f, handle.y - 24.0f}, {handle.x + 46.0f, handle.y - 24.0f}, t.ink, 5.0f);
  s.line({handle.x, handle.y - 24.0f}, {handle.x, handle.y}, t.ink, 7.0f);
  s.line({handle.x - 32.0f, handle.y + 2.0f}, {handle.x + 32.0f, handle.y + 2.0f}, t.ink, 11.0f);
  s.turn({handle.x, handle.y - 6.0f}, 42.0f, 128.0f, 228.0f, t.accent);
}

// Turn, wait, read.
void turn_and_read(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-76.0f, -50.0f};
  s.dial(center, 54.0f);
  s.antenna(center, 40.0, 50.0f);
  s.turn(center, 68.0f, 34.0f, 88.0f, t.accent);
  const Point watch{82.0f, -44.0f};
  s.line({watch.x, watch.y - 56.0f}, {watch.x, watch.y - 44.0f}, t.ink, 8.0f);
  s.disc(watch, 46.0f, t.paper);
  s.ui().canvas().sector(s.at(watch.x, watch.y), s.size(40.0f), 0.0f, 150.0f, t.accent, 1.0f);
  s.circle(watch, 46.0f, t.ink, 5.0f);
  s.text({watch.x, watch.y + 74.0f}, "5 s", Face::TextBold, t.ink);
  s.button({-128.0f, 24.0f, -28.0f, 80.0f}, "58", true);
  s.hand({-36.0f, 26.0f});
}

// Readings under the pattern of an antenna of 60 degrees, and its top.
void curve_of_readings(Sketch& s) {
  const auto& t = s.theme();
  const auto pattern = gear::Pattern::directional(60.0, 14.0);
  const auto point = [&](double off_deg) {
    const double up = 0.1 + 0.8 * (1.0 + pattern.relative_db(Turn::clockwise_deg(off_deg)) / 14.0);
    return Point{static_cast<float>(0.95 * off_deg + 14.0), static_cast<float>(96.0 - 186.0 * up)};
  };
  const Point top = point(0.0);
  s.line({top.x, -112.0f}, {top.x, 96.0f}, t.accent, 4.0f);
  s.line({top.x - 13.0f, -112.0f}, {top.x + 13.0f, -112.0f}, t.accent, 8.0f);
  std::vector<Point> curve;
  for (double off = -150.0; off <= 126.0; off += 4.0) curve.push_back(point(off));
  s.curve(curve, t.accent, 5.0f);
  for (const double off : {-130.0, -84.0, -46.0, -16.0, 22.0, 58.0, 104.0}) {
    s.line({point(off).x, 96.0f}, point(off), t.ink, 3.0f);
    s.disc(point(off), 8.0f, t.ink);
  }
  s.line({-138.0f, 96.0f}, {138.0f, 96.0f}, t.ink, 4.0f);
}

// The picture fails on both sides; the middle between is the heading.
void two_edges(Sketch& s) {
  const auto& t = s.theme();
  const Point center{0.0f, 70.0f};
  s.ui().canvas().sector(s.at(center.x, center.y), s.size(120.0f), -46.0f, 46.0f, t.lobe, 1.0f);
  for (const double side : {-46.0, 46.0}) {
    s.line(center, ui::around(center, 122.0f, side), t.ink, 4.0f);
    const Point cross = ui::around(center, 138.0f, side);
    s.line({cross.x - 9.0f, cross.y - 9.0f}, {cross.x + 9.0f, cross.y + 9.0f}, t.warning, 5.0f);
    s.line({cross.x - 9.0f, cross.y + 9.0f}, {cross.x + 9.0f, cross.y - 9.0f}, t.warning, 5.0f);
  }
  s.antenna(center, 0.0, 122.0f);
  s.rig(center, 0.0, 66.0f);
  s.arc(center, 76.0f, -42.0f, -4.0f, t.accent, 4.0f);
  s.arc(center, 76.0f, 4.0f, 42.0f, t.accent, 4.0f);
  s.arc(center, 84.0f, 4.0f, 42.0f, t.accent, 4.0f);
  s.arc(center, 84.0f, -42.0f, -4.0f, t.accent, 4.0f);
}

// The rig from above, and the way from its nose.
void from_the_nose(Sketch& s) {
  const auto& t = s.theme();
  const Point center{0.0f, 66.0f};
  s.rig(center, 0.0, 96.0f);
  s.line(ui::around(center, 62.0f, 0.0), ui::around(center, 150.0f, 0.0), t.ink, 4.0f);
  s.arc(center, 118.0f, 0.0f, 52.0f, t.accent, 10.0f);
  s.arrow(ui::around(center, 62.0f, 52.0), ui::around(center, 150.0f, 52.0), t.accent, 6.0f);
  s.text({-98.0f, -52.0f}, "52°", Face::Big, t.ink);
}

// The large arrow of the roof.
void turn_arrow(Sketch& s) {
  const auto& t = s.theme();
  const Rect page{-132.0f, -112.0f, 132.0f, 112.0f};
  s.fill(page, t.paper, 14.0f);
  s.outline(page, t.ink, 4.0f, 14.0f);
  s.arc({-4.0f, 60.0f}, 104.0f, -44.0f, 26.0f, t.accent, 22.0f);
  s.polygon({{88.0f, -11.0f}, {58.0f, -68.0f}, {25.0f, 1.0f}}, t.accent);
  s.text({0.0f, 78.0f}, "37°", Face::Big, t.ink);
}

// The arrow with its doubt, all within the arc.
void hold_there(Sketch& s) {
  const auto& t = s.theme();
  const Point center{0.0f, 78.0f};
  s.ui().canvas().sector(s.at(center.x, center.y), s.size(150.0f), -12.0f, 18.0f, t.lobe, 1.0f);
  s.arc(center, 166.0f, -34.0f, 34.0f, t.accent, 18.0f);
  s.line(ui::around(center, 28.0f, -12.0), ui::around(center, 150.0f, -12.0), t.accent, 2.5f);
  s.line(ui::around(center, 28.0f, 18.0), ui::around(center, 150.0f, 18.0), t.accent, 2.5f);
  s.antenna(center, 3.0, 150.0f);
  s.rig(center, 320.0, 62.0f);
}

// A loudspeaker, its pulses closer and closer.
void beeps(Sketch& s) {
  const auto& t = s.theme();
  s.polygon({{-130.0f, -64.0f}, {-104.0f, -64.0f}, {-104.0f, -24.0f}, {-130.0f, -24.0f}}, t.ink);
  s.polygon({{-106.0f, -64.0f}, {-74.0f, -92.0f}, {-74.0f, 4.0f}, {-106.0f, -24.0f}}, t.ink);
  for (const float radius : {34.0f, 56.0f, 78.0f}) {
    s.arc({-84.0f, -44.0f}, radius, 56.0f, 124.0f, t.accent, 6.0f);
  }
  float x = -132.0f;
  for (const float gap : {44.0f, 36.0f, 28.0f, 22.0f, 17.0f, 14.0f, 12.0f, 11.0f, 10.0f}) {
    s.line({x, 50.0f}, {x, 84.0f}, t.ink, 7.0f);
    x += gap;
  }
  s.fill({x - 2.0f, 50.0f, 136.0f, 84.0f}, t.accent, 4.0f);
  s.line({-136.0f, 106.0f}, {136.0f, 106.0f}, t.rule, 3.0f);
  const Point center{72.0f, -22.0f};
  s.arc(center, 64.0f, -30.0f, 30.0f, t.accent, 9.0f);
  s.antenna(center, 0.0, 56.0f);
}

}  // namespace

GuidePictures aim_pictures() {
  return {ways, to_number, within_arc, look_up};
}

GuidePictures peak_pictures() {
  return {meter, turn_and_read, curve_of_readings, two_edges};
}

GuidePictures roof_pictures() {
  return {from_the_nose, turn_arrow, hold_there, beeps};
}

}  // namespace mastwise::screens
