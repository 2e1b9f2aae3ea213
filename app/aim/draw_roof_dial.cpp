#include "app/aim/draw_roof_dial.hpp"

#include "app/ui/kite.hpp"
#include "app/ui/rig_shape.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

class RoofDial {
 public:
  RoofDial(Ui& ui, Rect area, const Shared& shared, const std::optional<Aimed>& pointing);
  void draw();

 private:
  // On the screen, clockwise from the top.
  double on_dial_deg(Bearing<True> bearing) const { return (bearing - up_).clockwise_deg(); }
  Point at(Bearing<True> bearing, float radius) const {
    return ui::around(center_, radius, on_dial_deg(bearing));
  }
  void ring();
  void norths();
  void tolerance();
  void arrow();

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  const Findings& found_;
  const std::optional<Aimed>& pointing_;
  Bearing<True> up_;
  Point center_;
  float radius_ = 0.0f;
};

RoofDial::RoofDial(Ui& ui, Rect area, const Shared& shared, const std::optional<Aimed>& pointing)
    : ui_(ui),
      canvas_(ui.canvas()),
      theme_(ui.theme()),
      found_(shared.findings),
      pointing_(pointing) {
  constexpr float kLabel = 40.0f, kOutside = 58.0f;
  if (found_.nose) up_ = found_.nose->nose();
  up_ = Bearing<True>::degrees(ui.smooth_angle("roof up", up_.degrees()));
  const float top = area.top + (found_.nose ? kLabel : 0.0f);
  const float most = std::min(area.width(), area.bottom - top);
  radius_ = std::max(60.0f, 0.5f * most - kOutside);
  center_ = {area.center().x, 0.5f * (top + area.bottom)};
}

void RoofDial::ring() {
  canvas_.disc(center_, radius_, theme_.panel);
  canvas_.circle(center_, radius_, theme_.rule, 3.0f);
  for (int deg = 0; deg < 360; deg += 10) {
    const bool long_tick = deg % 30 == 0;
    const double turn_deg = deg + on_dial_deg(Bearing<True>());
    canvas_.line(ui::around(center_, radius_ - 4.0f, turn_deg),
                 ui::around(center_, radius_ - (long_tick ? 22.0f : 14.0f), turn_deg), theme_.ink,
                 long_tick ? 4.0f : 2.0f);
  }
  if (!found_.nose) return;
  canvas_.text({center_.x, center_.y - radius_ - 36.0f}, words::say("nose"), Face::Cardinal,
               theme_.second_ink, Align::Center);
}

// Letters of true north inside; outside a filled kite for it, and a hollow one for the needle's.
void RoofDial::norths() {
  constexpr std::array kLetters{"N", "E", "S", "W"};
  // A small dial has room for one letter.
  constexpr float kRoomForAll = 88.0f;
  const std::size_t shown = radius_ >= kRoomForAll ? kLetters.size() : 1;
  for (std::size_t i = 0; i < shown; ++i) {
    const Point middle = at(Bearing<True>::degrees(90.0 * static_cast<double>(i)), radius_ - 42.0f);
    canvas_.text({middle.x, middle.y + 12.0f}, words::say(kLetters[i]), Face::Cardinal, theme_.ink,
                 Align::Center);
  }
  const auto mark = [&](Bearing<True> north, bool filled) {
    ui::kite(canvas_, at(north, radius_ + 44.0f), 14.0f, theme_.ink, filled, on_dial_deg(north));
  };
  mark(Bearing<True>(), true);
  if (!found_.field) return;
  mark(to_true(Bearing<Magnetic>(), found_.field->declination), false);
}

void RoofDial::tolerance() {
  if (!found_.card) return;
  constexpr float kWide = 18.0f, kAway = 15.0f;
  const double target_deg = on_dial_deg(found_.card->bearing_true);
  const auto deg = [&](double turn_deg) { return static_cast<float>(target_deg + turn_deg); };
  if (found_.slack) {
    const double left_deg = std::min(180.0, found_.slack->left_deg);
    const double right_deg = std::min(180.0, found_.slack->right_deg);
    canvas_.arc(center_, radius_ + kAway, deg(-left_deg), deg(right_deg), theme_.accent, kWide);
  }
  canvas_.line(ui::around(center_, radius_ + 4.0f, target_deg),
               ui::around(center_, radius_ + kAway + 0.6f * kWide, target_deg), theme_.paper,
               13.0f);
  canvas_.line(ui::around(center_, radius_ + 2.0f, target_deg),
               ui::around(center_, radius_ + kAway + kWide, target_deg), theme_.ink, 5.0f);
}

void RoofDial::arrow() {
  std::optional<Bearing<True>> points;
  if (pointing_) {
    points = found_.facing;
  } else if (found_.card) {
    points = found_.card->bearing_true;
  }
  if (!points) return;
  const double turn_deg = ui_.smooth_angle("roof arrow", on_dial_deg(*points));
  if (pointing_) {
    const auto doubt = static_cast<float>(pointing_->doubt_deg);
    const auto deg = static_cast<float>(turn_deg);
    canvas_.sector(center_, radius_ - 2.0f, deg - doubt, deg + doubt, theme_.rule, 0.9f);
  }
  const float tip = radius_ - 4.0f, head = 0.24f * radius_;
  canvas_.line(center_, ui::around(center_, tip - 0.7f * head, turn_deg), theme_.ink, 10.0f);
  const Point neck = ui::around(center_, tip - head, turn_deg);
  const std::array shape{ui::around(center_, tip, turn_deg),
                         ui::around(neck, 0.45f * head, turn_deg + 90.0),
                         ui::around(neck, 0.45f * head, turn_deg - 90.0)};
  canvas_.polygon(shape, theme_.ink);
  canvas_.disc(center_, 13.0f, theme_.ink);
}

void RoofDial::draw() {
  ring();
  const std::optional<Turn> nose =
      found_.nose ? std::optional(found_.nose->nose() - up_) : std::nullopt;
  ui::draw_rig(canvas_, theme_, center_, nose, 0.4f * radius_ / 85.0f);
  tolerance();
  norths();
  arrow();
}

// A part of a large circle, in degrees right of its top.
struct Bow {
  Point center;
  float radius = 0.0f;
};
Bow bow_in(Rect area, float half_deg, float below_top) {
  constexpr float kRadians = 3.14159265f / 180.0f;
  const float radius = 0.5f * area.width() / std::sin(half_deg * kRadians);
  return {{area.center().x, area.top + below_top + radius}, radius};
}

constexpr float kBow_deg = 26.0f;

}  // namespace

void draw_roof_dial(Ui& ui, Rect area, const Shared& shared, const std::optional<Aimed>& pointing) {
  RoofDial(ui, area, shared, pointing).draw();
}

void draw_tolerance_scale(Ui& ui, Rect area, const Aimed& pointing,
                          const std::optional<Slack>& slack) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const float band = std::min(64.0f, 0.36f * area.height());
  const Bow bow = bow_in(area, kBow_deg, 0.5f * band + 14.0f);
  const double points_deg = -pointing.turn.clockwise_deg();
  const double left_deg = slack ? std::min(180.0, slack->left_deg) : 0.0;
  const double right_deg = slack ? std::min(180.0, slack->right_deg) : 0.0;
  const double reach_deg =
      std::max({left_deg, right_deg, std::fabs(points_deg) + pointing.doubt_deg, 4.0}) * 1.1;
  const auto on_bow = [&](double deg) { return static_cast<float>(deg / reach_deg) * kBow_deg; };
  if (slack) {
    canvas.arc(bow.center, bow.radius, on_bow(-left_deg), on_bow(right_deg), theme.accent, band);
  }
  const auto at = [&](double deg, float out) {
    return ui::around(bow.center, bow.radius + out, on_bow(deg));
  };
  // A gap on both sides sets the heading off where band and ink have one color.
  const bool good = pointing.state == Aimed::State::Good;
  canvas.line(at(0.0, -0.5f * band - 2.0f), at(0.0, 0.5f * band + 2.0f),
              good ? theme.lobe : theme.panel, 24.0f);
  canvas.line(at(0.0, -0.5f * band - 2.0f), at(0.0, 0.5f * band + 12.0f), theme.ink, 10.0f);
  const double shown_deg = ui.smooth("roof points", points_deg);
  const float doubt_out = -0.5f * band - 16.0f;
  canvas.arc(bow.center, bow.radius + doubt_out, on_bow(shown_deg - pointing.doubt_deg),
             on_bow(shown_deg + pointing.doubt_deg), theme.ink, 22.0f);
  canvas.arc(bow.center, bow.radius + doubt_out, on_bow(shown_deg - pointing.doubt_deg),
             on_bow(shown_deg + pointing.doubt_deg), theme.rule, 16.0f);
  const Point tip = at(shown_deg, doubt_out - 6.0f);
  const std::array pointer{tip, tip + Point{30.0f, 52.0f}, tip + Point{-30.0f, 52.0f}};
  canvas.polygon(pointer, theme.ink);
}

void draw_turn_arrow(Ui& ui, Rect area, bool right) {
  constexpr float kArc_deg = 32.0f, kNeck_deg = 17.0f, kWidest = 3.1f;
  // Its ends hang lower the wider it is.
  const float aside = std::max(0.0f, area.width() - kWidest * area.height()) / 2.0f;
  area.left += aside;
  area.right -= aside;
  const float side = right ? 1.0f : -1.0f;
  const float band = std::min(0.11f * area.width(), 0.42f * area.height());
  Bow bow = bow_in(area, kArc_deg, 1.1f * band);
  const ui::Color color = ui.theme().accent;
  ui::Canvas& canvas = ui.canvas();
  constexpr float kOverlap_deg = 1.0f;  // no seam between band and head
  const float tail = -side * kArc_deg, neck = side * kNeck_deg;
  const float end = neck + side * kOverlap_deg;
  canvas.arc(bow.center, bow.radius, std::min(tail, end), std::max(tail, end), color, band);
  // Clockwise, as the canvas smooths the edges.
  const std::array head{ui::around(bow.center, bow.radius - side * 1.15f * band, neck),
                        ui::around(bow.center, bow.radius + side * 1.15f * band, neck),
                        ui::around(bow.center, bow.radius - 0.1f * band, side * kArc_deg)};
  canvas.polygon(head, color);
}

}  // namespace mastwise::screens
