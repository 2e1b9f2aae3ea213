#include "app/guide/draw_sketch.hpp"

#include "app/ui/arrow.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/rig_symbol.hpp"

#include <algorithm>
#include <array>

namespace mastwise::screens {

Sketch::Sketch(Ui& ui, Rect room)
    : ui_(ui),
      canvas_(ui.canvas()),
      middle_(room.center()),
      scale_(std::min(room.width() / kWidth, room.height() / kHeight)) {}

Rect Sketch::at(Rect rect) const {
  const Point from = at(rect.left, rect.top), to = at(rect.right, rect.bottom);
  return {from.x, from.y, to.x, to.y};
}

void Sketch::line(Point from, Point to, Color color, float width) {
  canvas_.line(at(from.x, from.y), at(to.x, to.y), color, size(width));
}

void Sketch::lines(std::initializer_list<Point> points, Color color, float width, bool closed) {
  std::vector<Point> placed;
  for (const Point point : points) placed.push_back(at(point.x, point.y));
  canvas_.polyline(placed, color, size(width), closed);
}

void Sketch::curve(std::span<const Point> points, Color color, float width) {
  std::vector<Point> placed;
  for (const Point point : points) placed.push_back(at(point.x, point.y));
  canvas_.polyline(placed, color, size(width));
}

void Sketch::polygon(std::initializer_list<Point> points, Color color) {
  std::vector<Point> placed;
  for (const Point point : points) placed.push_back(at(point.x, point.y));
  canvas_.polygon(placed, color);
}

void Sketch::disc(Point center, float radius, Color color) {
  canvas_.disc(at(center.x, center.y), size(radius), color);
}

void Sketch::circle(Point center, float radius, Color color, float width) {
  canvas_.circle(at(center.x, center.y), size(radius), color, size(width));
}

void Sketch::arc(Point center, float radius, float from_deg, float to_deg, Color color,
                 float width) {
  canvas_.arc(at(center.x, center.y), size(radius), from_deg, to_deg, color, size(width));
}

void Sketch::fill(Rect rect, Color color, float radius) {
  canvas_.fill(at(rect), color, size(radius));
}

void Sketch::outline(Rect rect, Color color, float width, float radius) {
  canvas_.outline(at(rect), color, size(width), size(radius));
}

void Sketch::arrow(Point from, Point tip, Color color, float width) {
  ui::draw_arrow(canvas_, at(from.x, from.y), at(tip.x, tip.y), color, size(width));
}

// A bent arrow around the center, clockwise or back.
void Sketch::turn(Point center, float radius, float from_deg, float to_deg, Color color) {
  constexpr float kWidth_units = 5.0f, kHead_deg = 14.0f;
  const float sign = to_deg < from_deg ? -1.0f : 1.0f;
  const float neck_deg = to_deg - sign * kHead_deg;
  arc(center, radius, std::min(from_deg, neck_deg), std::max(from_deg, neck_deg), color,
      kWidth_units);
  arrow(ui::around(center, radius, neck_deg - sign), ui::around(center, radius, to_deg), color,
        kWidth_units);
}

void Sketch::text(Point baseline, const std::string& words, Face face, Color color, Align align) {
  canvas_.text(at(baseline.x, baseline.y), words, face, color, align);
}

void Sketch::rig(Point center, double nose_deg, float length) {
  ui::draw_rig(canvas_, theme(), at(center.x, center.y), Turn::clockwise_deg(nose_deg),
               size(length) / ui::kRigLength);
}

void Sketch::dial(Point center, float radius) {
  disc(center, radius, theme().paper);
  circle(center, radius, theme().ink, 3.0f);
  for (int degrees = 0; degrees < 360; degrees += 30) {
    const float length = degrees % 90 == 0 ? 0.14f : 0.08f;
    line(ui::around(center, (1.0f - length) * radius, degrees), ui::around(center, radius, degrees),
         theme().ink, 3.0f);
  }
}

void Sketch::chance(Point left, float width, std::size_t filled) {
  const auto word = static_cast<reception::ChanceWord>(ui::kChanceSegments - filled);
  ui::draw_chance_mark(ui_, at({left.x, left.y - 9.0f, left.x + width, left.y + 9.0f}), word);
}

void Sketch::ring(Point center, double chance_percent) {
  ui::draw_chance_ring(canvas_, theme(), ui_.look(), at(center.x, center.y), chance_percent);
}

void Sketch::kite(Point center, float half_height, bool filled, double turned_deg) {
  ui::kite(canvas_, at(center.x, center.y), size(half_height), theme().ink, filled, turned_deg);
}

// The arrow of the dial.
void Sketch::antenna(Point center, double to_deg, float length) {
  arrow(center, ui::around(center, length, to_deg), theme().ink, 7.0f);
  disc(center, 8.0f, theme().ink);
}

// A boom with its elements on a mast.
void Sketch::mast(Point foot, float height) {
  const Point top{foot.x, foot.y - height};
  line(foot, top, theme().ink, 6.0f);
  line({top.x - 34.0f, top.y}, {top.x + 34.0f, top.y}, theme().ink, 5.0f);
  for (const float x : {-30.0f, -10.0f, 10.0f, 30.0f}) {
    const float half = 15.0f - 0.15f * x;
    line({top.x + x, top.y - half}, {top.x + x, top.y + half}, theme().ink, 4.0f);
  }
}

// A lattice tower that sends.
void Sketch::tower(Point foot, float height) {
  const float half = 0.16f * height;
  const Point top{foot.x, foot.y - height};
  line({foot.x - half, foot.y}, top, theme().ink, 3.5f);
  line({foot.x + half, foot.y}, top, theme().ink, 3.5f);
  for (const float part : {0.25f, 0.5f, 0.75f}) {
    const float y = foot.y - part * height, x = (1.0f - part) * half;
    line({foot.x - x, y}, {foot.x + x, y}, theme().ink, 3.0f);
  }
  disc(top, 5.0f, theme().accent);
}

void Sketch::button(Rect rect, const std::string& label, bool filled) {
  fill(rect, filled ? theme().accent : theme().panel, 12.0f);
  if (!filled) {
    outline({rect.left + 1.5f, rect.top + 1.5f, rect.right - 1.5f, rect.bottom - 1.5f},
            theme().accent, 3.0f, 12.0f);
  }
  if (label.empty()) return;
  const Point middle = at(rect).center();
  canvas_.text({middle.x, middle.y + 9.0f}, label, Face::TextBold,
               filled ? theme().on_accent : theme().accent, Align::Center);
}

// A slip of paper with a folded corner.
void Sketch::slip(Rect rect, const std::string& value) {
  constexpr float kFold = 18.0f;
  const Point fold_left{rect.right - kFold, rect.top}, fold_right{rect.right, rect.top + kFold};
  polygon({{rect.left, rect.top},
           fold_left,
           fold_right,
           {rect.right, rect.bottom},
           {rect.left, rect.bottom}},
          theme().paper);
  lines({{rect.left, rect.top},
         fold_left,
         fold_right,
         {rect.right, rect.bottom},
         {rect.left, rect.bottom}},
        theme().accent, 3.0f, true);
  polygon({fold_left, fold_right, {rect.right - kFold, rect.top + kFold}}, theme().accent);
  const Point middle = at(rect).center();
  canvas_.text({middle.x - size(4.0f), middle.y + 9.0f}, value, Face::TextBold, theme().ink,
               Align::Center);
}

// A memory stick, its plug on the right.
void Sketch::stick(Rect rect) {
  fill(rect, theme().paper, 10.0f);
  outline(rect, theme().ink, 4.0f, 10.0f);
  const float middle = rect.center().y, half = 0.3f * rect.height();
  const Rect plug{rect.right, middle - half, rect.right + 1.6f * half, middle + half};
  outline(plug, theme().ink, 4.0f);
  disc({plug.left + 0.8f * half, middle - 0.4f * half}, 3.0f, theme().ink);
  disc({plug.left + 0.8f * half, middle + 0.4f * half}, 3.0f, theme().ink);
}

void Sketch::tv(Rect rect) {
  fill(rect, theme().paper, 8.0f);
  outline(rect, theme().ink, 5.0f, 8.0f);
  const float middle = rect.center().x, foot = rect.bottom + 14.0f;
  line({middle, rect.bottom}, {middle, foot}, theme().ink, 5.0f);
  line({middle - 34.0f, foot}, {middle + 34.0f, foot}, theme().ink, 5.0f);
}

void Sketch::finger(Point from, Point to, float width, Color color) {
  line(from, to, color, width);
  disc(from, width / 2.0f, color);
  disc(to, width / 2.0f, color);
}

// From below right: all limbs in ink, then again thinner in the paper's color, so that only the
// outline of the hand stays.
void Sketch::hand(Point tip, bool held) {
  struct Limb {
    Point from, to;
    float width;
  };
  const auto limb = [&](float x0, float y0, float x1, float y1, float width) {
    return Limb{{tip.x + x0, tip.y + y0}, {tip.x + x1, tip.y + y1}, width};
  };
  const std::array limbs{limb(5.0f, 11.0f, 27.0f, 56.0f, 22.0f),   // the finger that touches
                         limb(38.0f, 46.0f, 44.0f, 62.0f, 19.0f),  // bent ones
                         limb(55.0f, 50.0f, 59.0f, 64.0f, 18.0f),
                         limb(70.0f, 57.0f, 71.0f, 70.0f, 17.0f),
                         limb(12.0f, 76.0f, 34.0f, 84.0f, 19.0f),  // thumb
                         limb(44.0f, 76.0f, 58.0f, 82.0f, 46.0f)};
  const float reach = held ? 30.0f : 21.0f;
  circle(tip, reach, theme().accent, 3.0f);
  if (held) circle(tip, 20.0f, theme().accent, 3.0f);
  for (const Limb& one : limbs) finger(one.from, one.to, one.width + 7.0f, theme().ink);
  for (const Limb& one : limbs) finger(one.from, one.to, one.width, theme().paper);
}

}  // namespace mastwise::screens
