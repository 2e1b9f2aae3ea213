#include "app/safety/draw_pictures.hpp"

#include "app/ui/shortened.hpp"
#include "app/words/cautions.hpp"
#include "app/words/language.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <fmt/format.h>

namespace mastwise {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::RigProfile;
using ui::Ui;
using words::say;

constexpr float kGround = 44.0f;  // of the strip with the caption
// The height of the drawn line: a usual one along roads [common practice, no source].
constexpr float kLine_m = 9.0f;

class Picture {
 public:
  Picture(Ui& ui, Rect area, const SafetyState& state, bool miles)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        state_(state),
        miles_(miles),
        ground_(area.bottom - kGround) {}

  void draw(safety::PromptPicture picture);

 private:
  void ground(const char* caption);
  RigProfile rig_at(float left, float units_per_m) const;
  float scale_for(float top_m) const { return (ground_ - area_.top) / top_m; }
  void keep_out();
  float keep_out_scale(float pole_x) const;
  bool clear_of_circle(float units_per_m, float pole_x) const;
  void pole(Point conductor);
  void circle(Point conductor, float units_per_m);
  void raised_height(const RigProfile& rig);
  void ladder();
  void storm();
  void lowered();
  void arrow(Point from, Point to, ui::Color color, float width);
  void dots(Point from, Point to, ui::Color color);

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const SafetyState& state_;
  bool miles_;
  float ground_;
};

void Picture::ground(const char* caption) {
  canvas_.line({area_.left, ground_}, {area_.right, ground_}, theme_.ink, 4.0f);
  ui::text_within(canvas_, {area_.left + 8.0f, area_.bottom - 10.0f}, area_.width() - 16.0f,
                  caption, Face::Text, theme_.ink);
}

RigProfile Picture::rig_at(float left, float units_per_m) const {
  RigProfile rig = rig_of(theme_, state_.raised_m);
  rig.units_per_m = units_per_m;
  rig.ground = {left + 0.5f * rig.length_m * units_per_m, ground_};
  return rig;
}

void Picture::arrow(Point from, Point to, ui::Color color, float width) {
  canvas_.line(from, to, color, width);
  const float along = touch::distance(from, to);
  const Point ahead = (to - from) * (1.0f / along), aside{-ahead.y, ahead.x};
  const float size = 4.0f * width;
  const std::array head{to, to - ahead * (1.6f * size) + aside * (0.7f * size),
                        to - ahead * (1.6f * size) - aside * (0.7f * size)};
  canvas_.polygon(head, color);
}

void Picture::dots(Point from, Point to, ui::Color color) {
  const float along = touch::distance(from, to);
  for (float way = 0.0f; way < along; way += 9.0f) {
    canvas_.disc(from + (to - from) * (way / along), 1.8f, color);
  }
}

// Whether the raised antenna and the rig stay outside the circle.
bool Picture::clear_of_circle(float units_per_m, float pole_x) const {
  const RigProfile rig = rig_at(area_.left + 56.0f, units_per_m);
  const Point conductor{pole_x, ground_ - kLine_m * units_per_m};
  const float radius = 1.06f * static_cast<float>(state_.keep_out.unknown_m) * units_per_m;
  const Point front{rig.ground.x + 0.38f * rig.length_m * units_per_m,
                    ground_ - rig.roof_m * units_per_m};
  return touch::distance(ui::rig_antenna_end(rig), conductor) > radius &&
         touch::distance(front, conductor) > radius;
}

float Picture::keep_out_scale(float pole_x) const {
  float scale = scale_for(std::max(kLine_m + 1.0f, static_cast<float>(state_.raised_m) + 1.6f));
  while (scale > 4.0f && !clear_of_circle(scale, pole_x)) scale *= 0.98f;
  return scale;
}

void Picture::pole(Point conductor) {
  const float width = 9.0f;
  canvas_.line({conductor.x + 14.0f, ground_}, {conductor.x + 14.0f, conductor.y - 14.0f},
               theme_.ink, width);
  canvas_.line({conductor.x - 8.0f, conductor.y + 12.0f},
               {conductor.x + 36.0f, conductor.y + 12.0f}, theme_.ink, 6.0f);
  canvas_.disc(conductor, 9.0f, theme_.warning);
}

// The circle to keep out of, with its radius.
void Picture::circle(Point conductor, float units_per_m) {
  const auto unknown_m = static_cast<float>(state_.keep_out.unknown_m);
  const float radius = unknown_m * units_per_m;
  for (int part = 0; part < 60; ++part) {
    const float from_deg = 6.0f * static_cast<float>(part);
    canvas_.arc(conductor, radius, from_deg, from_deg + 3.6f, theme_.warning, 5.0f);
  }
  const Point edge{conductor.x - radius, conductor.y};
  arrow({conductor.x - 12.0f, conductor.y}, edge, theme_.warning, 3.5f);
  const std::string distance = words::at_least_alone(unknown_m, miles_);
  const Point below{edge.x + 0.5f * radius, conductor.y + 44.0f};
  const bool large = canvas_.text_width(distance, Face::Matter) < 0.66f * radius;
  canvas_.text(below, distance, large ? Face::Matter : Face::TextBold, theme_.warning,
               Align::Center);
  const bool by_height = state_.keep_out.least_m >= state_.keep_out.unknown_m;
  const std::string why = by_height
                              ? fmt::format("1.5 × {}", words::height(state_.raised_m, miles_))
                              : std::string(say("unknown line"));
  if (canvas_.text_width(why, Face::Text) < 0.8f * radius) {
    canvas_.text({below.x, below.y + 30.0f}, why, Face::Text, theme_.ink, Align::Center);
  }
  const char* out = say("Stay out");
  if (radius > 210.0f) {
    // Between the circle and the pole.
    const bool wide = canvas_.text_width(out, Face::Matter) > 0.68f * radius;
    canvas_.text({conductor.x - 0.38f * radius, conductor.y + 0.6f * radius}, out,
                 wide ? Face::Value : Face::Matter, theme_.warning, Align::Center);
  }
}

void Picture::raised_height(const RigProfile& rig) {
  const float x = area_.left + 20.0f, top = ui::rig_antenna_end(rig).y;
  arrow({x, 0.5f * (top + ground_)}, {x, ground_ - 3.0f}, theme_.ink, 2.5f);
  arrow({x, 0.5f * (top + ground_)}, {x, top}, theme_.ink, 2.5f);
  const float mast = ui::rig_mast(rig).x;
  dots({area_.left + 8.0f, top}, {mast - 0.9f * rig.units_per_m, top}, theme_.ink);
  canvas_.text({area_.left + 12.0f, top - 44.0f}, words::height(state_.raised_m, miles_),
               Face::Value, theme_.ink);
  canvas_.text({area_.left + 12.0f, top - 12.0f}, say("raised"), Face::Text, theme_.ink);
}

void Picture::keep_out() {
  const float pole_x = area_.right - 60.0f;
  const float scale = keep_out_scale(pole_x);
  const Point conductor{pole_x, ground_ - kLine_m * scale};
  canvas_.push_clip({area_.left, area_.top, area_.right, ground_});
  circle(conductor, scale);
  canvas_.pop_clip();
  pole(conductor);
  RigProfile rig = rig_at(area_.left + 56.0f, scale);
  rig.antenna = RigProfile::Antenna::ToBeRaised;
  ui::draw_rig_side(canvas_, rig);
  raised_height(rig);
  ground(say("To scale, by your antenna's height"));
}

// The ladder stands one in four and rises 3 ft over the roof.
void Picture::ladder() {
  constexpr float kAbove_m = 0.9144f, kLeast_m = 5.6f;
  const RigProfile plain = rig_of(theme_, state_.raised_m);
  constexpr float kLabels = 156.0f;
  const float wide_m = 0.98f * plain.length_m + 0.25f * plain.roof_m + 0.4f;
  const float scale = std::min(scale_for(kLeast_m), (area_.width() - kLabels) / wide_m);
  RigProfile rig = rig_at(area_.left + 20.0f, scale);
  rig.nose_right = false;
  ui::draw_rig_side(canvas_, rig);
  // It leans on the roof's rear edge.
  const float roof = rig.roof_m * scale, reach = roof + kAbove_m * scale;
  const float wall = rig.ground.x + 0.48f * rig.length_m * scale;
  const auto on_rail = [&](float up) { return Point{wall + 0.25f * (roof - up), ground_ - up}; };
  const Point aside{0.4f * scale, 0.0f};
  for (const Point rail : {Point{}, aside}) {
    canvas_.line(on_rail(0.0f) + rail, on_rail(reach) + rail, theme_.accent, 6.0f);
  }
  for (float up = 0.3f * scale; up < reach; up += 0.42f * scale) {
    canvas_.line(on_rail(up), on_rail(up) + aside, theme_.accent, 4.0f);
  }
  const float right = on_rail(0.0f).x + aside.x + 16.0f;
  dots({on_rail(roof).x, ground_ - roof}, {right + 10.0f, ground_ - roof}, theme_.ink);
  dots({on_rail(reach).x, ground_ - reach}, {right + 10.0f, ground_ - reach}, theme_.ink);
  canvas_.text({right + 20.0f, ground_ - 0.5f * (roof + reach) + 9.0f},
               miles_ ? say("3 ft") : say("0.9 m"), Face::Value, theme_.ink);
  canvas_.text({right + 20.0f, ground_ - 0.4f * roof}, "1 : 4", Face::Value, theme_.ink);
  ground(say("One out for every four up"));
}

// From the last thunder until somebody may go out again.
void Picture::storm() {
  const float scale = std::min(scale_for(9.6f), 0.5f * area_.width() / 7.6f);
  RigProfile rig = rig_at(area_.left + 20.0f, scale);
  rig.antenna = RigProfile::Antenna::ToBeRaised;
  ui::draw_rig_side(canvas_, rig);
  const Point mast = ui::rig_mast(rig);
  const float top = ui::rig_antenna_end(rig).y;
  arrow({mast.x + 1.6f * scale, top - 12.0f}, {mast.x + 1.6f * scale, top + 0.8f * scale},
        theme_.warning, 4.0f);
  // The cloud comes from the right.
  const float size = std::min(0.11f * area_.width(), 0.16f * area_.height());
  const Point cloud{area_.right - 2.4f * size, area_.top + 1.5f * size};
  canvas_.disc(cloud, 1.1f * size, theme_.ink);
  canvas_.disc({cloud.x - 1.2f * size, cloud.y + 0.3f * size}, 0.8f * size, theme_.ink);
  canvas_.disc({cloud.x + 1.1f * size, cloud.y + 0.3f * size}, 0.8f * size, theme_.ink);
  canvas_.fill(
      {cloud.x - 1.2f * size, cloud.y + 0.3f * size, cloud.x + 1.1f * size, cloud.y + 1.1f * size},
      theme_.ink);
  const Point strike{cloud.x - 0.1f * size, cloud.y + 1.3f * size};
  const std::array bolt{strike, strike + Point{-0.4f * size, 0.6f * size},
                        strike + Point{0.1f * size, 0.5f * size},
                        strike + Point{-0.3f * size, 1.1f * size}};
  canvas_.polyline(bolt, theme_.warning, 6.0f);
  arrow({cloud.x - 2.2f * size, cloud.y}, {cloud.x - 3.4f * size, cloud.y}, theme_.ink, 4.0f);
  // The half hour after the last thunder.
  const float left = rig.ground.x + 0.62f * rig.length_m * scale, right = area_.right - 28.0f;
  const float y = ground_ - 30.0f;
  canvas_.line({left, y}, {right, y}, theme_.warning, 8.0f);
  canvas_.disc({left, y}, 10.0f, theme_.warning);
  canvas_.circle({right, y}, 10.0f, theme_.ink, 4.0f);
  canvas_.text({0.5f * (left + right), y - 20.0f}, say("30 min"), Face::Value, theme_.ink,
               Align::Center);
  ground(say("After the last thunder, 30 minutes"));
}

void Picture::lowered() {
  const float scale = std::min(scale_for(6.4f), (area_.width() - 100.0f) / 7.6f);
  RigProfile rig = rig_at(area_.left + 50.0f, scale);
  rig.antenna = RigProfile::Antenna::Down;
  ui::draw_rig_side(canvas_, rig);
  const Point mast = ui::rig_mast(rig);
  const Point over{mast.x + 1.0f * scale, mast.y - 0.55f * scale};
  arrow({over.x, over.y - 1.7f * scale}, over, theme_.warning, 7.0f);
  // The latch.
  canvas_.circle({mast.x + 1.75f * scale, mast.y - 0.24f * scale}, 0.42f * scale, theme_.accent,
                 5.0f);
  ground(say("Down, turned to stow, latched"));
}

void Picture::draw(safety::PromptPicture picture) {
  using Kind = safety::PromptPicture;
  if (picture == Kind::None) return;
  canvas_.fill({area_.left, area_.top, area_.right, ground_}, theme_.panel, 12.0f);
  canvas_.push_clip(area_);
  if (picture == Kind::KeepOut) keep_out();
  if (picture == Kind::Ladder) ladder();
  if (picture == Kind::Storm) storm();
  if (picture == Kind::Lowered) lowered();
  canvas_.pop_clip();
}

}  // namespace

RigProfile rig_of(const ui::Theme& theme, double raised_m) {
  RigProfile rig;
  rig.raised_m = static_cast<float>(raised_m);
  rig.roof_m = ui::usual_roof_m(raised_m);
  rig.ink = theme.ink;
  rig.body = theme.paper;
  rig.glass = theme.lobe;
  return rig;
}

void draw_prompt_picture(Ui& ui, Rect area, safety::PromptPicture picture, const SafetyState& state,
                         bool miles) {
  Picture(ui, area, state, miles).draw(picture);
}

}  // namespace mastwise
