#include "app/ui/dial.hpp"

#include "app/ui/kite.hpp"
#include "app/ui/rig_symbol.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

namespace mastwise::ui {
namespace {

// The rings inward from the radius.
constexpr float kTrueRing = 40.0f, kCompassRing = 62.0f;
// The tolerance's width.
constexpr float kBand = 16.0f;

float band_middle(const DialView& view) {
  return view.radius + 4.0f + kBand / 2.0f;
}

class Painter {
 public:
  Painter(Ui& ui, const DialView& view)
      : canvas_(ui.canvas()),
        theme_(ui.theme()),
        view_(view),
        center_(view.center),
        compass_(view.radius - kTrueRing),
        inner_(view.radius - kTrueRing - kCompassRing) {}

  void true_ring();
  void compass_ring();
  void rig_ring();
  void pattern();
  void from_nose();
  // Of their letters' size, so that they stay on their ring.
  float words_share() const {
    return canvas_.size_within(1.2f * inner_, view_.from_nose, Face::TextBold);
  }
  std::optional<Rect> words_box() const;
  void from_nose_words();
  void facing();
  void target();
  void null();
  void slack(Bearing<True> target, const Slack& slack);
  void surroundings();
  void rig();

 private:
  Point at(Bearing<True> bearing, float radius) const {
    return around(center_, radius, degrees_up(bearing));
  }
  double degrees_up(Bearing<True> bearing) const { return (bearing - view_.up).clockwise_deg(); }
  void true_letter(int degrees);
  void arrow_head(double at_deg, float radius, bool clockwise, Color color);

  Canvas& canvas_;
  const Theme& theme_;
  const DialView& view_;
  Point center_;
  float compass_, inner_;  // outer radii of the second and third ring
};

void Painter::true_letter(int degrees) {
  static constexpr std::array<const char*, 4> kCardinals{"N", "E", "S", "W"};
  const auto bearing = Bearing<True>::degrees(degrees);
  const Point middle = at(bearing, view_.radius - kTrueRing / 2.0f - 1.0f);
  if (degrees == 0) {
    kite(canvas_, middle, 15.0f, theme_.ink, true, degrees_up(bearing));
    return;
  }
  canvas_.text({middle.x, middle.y + 10.0f}, kCardinals[static_cast<std::size_t>(degrees / 90)],
               Face::Value, theme_.ink, Align::Center);
}

void Painter::true_ring() {
  canvas_.disc(center_, view_.radius, theme_.panel);
  canvas_.circle(center_, view_.radius, theme_.ink, 3.0f);
  constexpr int kStep = 5;
  for (int degrees = 0; degrees < 360; degrees += kStep) {
    if (degrees % 90 == 0) {
      true_letter(degrees);
      continue;
    }
    const bool hour = degrees % 30 == 0, ten = degrees % 10 == 0;
    const float length = hour ? 20.0f : ten ? 13.0f : 7.0f;
    const auto bearing = Bearing<True>::degrees(degrees);
    canvas_.line(at(bearing, view_.radius - length), at(bearing, view_.radius), theme_.ink,
                 hour  ? 4.0f
                 : ten ? 2.5f
                       : 1.5f);
  }
}

// The compass's own ring, turned by the declination; its numerals stay upright.
void Painter::compass_ring() {
  canvas_.disc(center_, compass_, theme_.paper);
  canvas_.circle(center_, compass_, theme_.ink, 2.0f);
  if (!view_.declination) return;
  const auto words = words_box();
  // Neighbors stay apart.
  constexpr float kChord = 0.5f, kApart = 8.0f;
  const float share = canvas_.size_within(kChord * (compass_ - 36.0f) - kApart, "330", Face::Text);
  for (int degrees = 0; degrees < 360; degrees += 10) {
    const Bearing<True> bearing = to_true(Bearing<Magnetic>::degrees(degrees), *view_.declination);
    const double turned = degrees_up(bearing);
    const Point middle = at(bearing, compass_ - 36.0f);
    if (degrees == 0) {
      kite(canvas_, at(bearing, compass_ - 22.0f), 15.0f, theme_.ink, false, turned);
      continue;
    }
    const bool hour = degrees % 30 == 0;
    const float width = hour ? 5.0f : 3.0f, length = hour ? 14.0f : 9.0f;
    const Point inner = at(bearing, compass_ - 2.0f - length), outer = at(bearing, compass_ - 2.0f);
    const Point across = around({0.0f, 0.0f}, width / 2.0f, turned + 90.0);
    const std::array hollow{Point{inner.x - across.x, inner.y - across.y},
                            Point{outer.x - across.x, outer.y - across.y},
                            Point{outer.x + across.x, outer.y + across.y},
                            Point{inner.x + across.x, inner.y + across.y}};
    canvas_.polyline(hollow, theme_.ink, 1.5f, true);
    if (!hour) continue;
    const std::string numeral = std::to_string(degrees);
    const float half = share * canvas_.text_width(numeral, Face::Text) / 2.0f;
    const Rect room{middle.x - half, middle.y - 14.0f, middle.x + half, middle.y + 14.0f};
    if (words && words->overlaps(room)) continue;
    canvas_.text({middle.x, middle.y + 9.0f}, numeral, Face::Text, theme_.ink, Align::Center,
                 share);
  }
}

// Dots from the nose, once it is known.
void Painter::rig_ring() {
  canvas_.disc(center_, inner_, theme_.panel);
  canvas_.circle(center_, inner_, theme_.ink, 2.0f);
  if (!view_.nose) return;
  for (int degrees = 0; degrees < 360; degrees += 10) {
    const bool side = degrees % 90 == 0;
    const Bearing<True> bearing = view_.nose->nose() + Turn::clockwise_deg(degrees);
    canvas_.disc(at(bearing, inner_ - 9.0f),
                 side                ? 4.5f
                 : degrees % 30 == 0 ? 3.0f
                                     : 1.6f,
                 side ? theme_.ink : theme_.second_ink);
  }
}

void Painter::surroundings() {
  if (view_.surroundings) view_.surroundings(canvas_, theme_, center_, inner_ - 18.0f);
}

void Painter::rig() {
  const float scale = std::min(1.0f, 0.72f * inner_ / kRigLength);
  draw_rig(canvas_, theme_, center_,
           view_.nose ? std::optional(view_.nose->nose() - view_.up) : std::nullopt, scale);
}

// Full response reaches most of the way to the rig's ring; 24 dB below it is the middle.
void Painter::pattern() {
  if (view_.pattern_db.empty() || !view_.target) return;
  constexpr double kDepth_db = 24.0;
  const float reach = inner_ - 20.0f;
  const double step_deg = 360.0 / static_cast<double>(view_.pattern_db.size());
  std::vector<Point> lobe;
  for (std::size_t i = 0; i < view_.pattern_db.size(); ++i) {
    const double share = std::max(0.0, 1.0 + view_.pattern_db[i] / kDepth_db);
    const auto off = Turn::clockwise_deg(step_deg * static_cast<double>(i));
    lobe.push_back(at(*view_.target + off, reach * static_cast<float>(share)));
  }
  canvas_.fan(center_, lobe, theme_.lobe);
  canvas_.polyline(lobe, theme_.accent, 2.5f, true);
}

void Painter::arrow_head(double at_deg, float radius, bool clockwise, Color color) {
  const double back = at_deg + (clockwise ? -1.0 : 1.0) * 14.0 / radius * 180.0 / std::numbers::pi;
  const std::array head{around(center_, radius, at_deg), around(center_, radius + 8.0f, back),
                        around(center_, radius - 8.0f, back)};
  canvas_.polygon(head, color);
}

// How far to turn from the nose, as an arc from there to the target.
void Painter::from_nose() {
  if (!view_.nose || !view_.target || view_.from_nose.empty()) return;
  constexpr double kHead_deg = 4.0, kLeast_deg = 12.0;
  const Turn turn = *view_.target - view_.nose->nose();
  const double nose = degrees_up(view_.nose->nose());
  const bool right = turn.clockwise_deg() >= 0.0;
  const float radius = 0.78f * inner_;
  if (turn.size_deg() > kLeast_deg) {
    const double to = nose + turn.clockwise_deg() - (right ? kHead_deg : -kHead_deg);
    canvas_.arc(center_, radius, static_cast<float>(right ? nose : to),
                static_cast<float>(right ? to : nose), theme_.ink, 3.0f);
    arrow_head(nose + turn.clockwise_deg() - (right ? 2.0 : -2.0), radius, right, theme_.ink);
    canvas_.line(around(center_, radius - 9.0f, nose), around(center_, radius + 9.0f, nose),
                 theme_.ink, 3.0f);
  }
}

// Where the same in words has its place, above everything else on the dial.
std::optional<Rect> Painter::words_box() const {
  if (!view_.nose || !view_.target || view_.from_nose.empty()) return std::nullopt;
  const Turn turn = *view_.target - view_.nose->nose();
  const double nose = degrees_up(view_.nose->nose());
  const bool right = turn.clockwise_deg() >= 0.0;
  Point middle = around(center_, 0.55f * inner_, nose + 0.5 * turn.clockwise_deg());
  const float half =
      words_share() * canvas_.text_width(view_.from_nose, Face::TextBold) / 2.0f + 6.0f;
  // Clear of the target's arrow, from which the words lie on the nose's side.
  const Point aside =
      around({0.0f, 0.0f}, 1.0f, nose + turn.clockwise_deg() + (right ? -90.0 : 90.0));
  const float away = (middle.x - center_.x) * aside.x + (middle.y - center_.y) * aside.y;
  const float needed = half * std::fabs(aside.x) + 16.0f * std::fabs(aside.y) + 6.0f;
  if (away < needed) middle = middle + aside * (needed - away);
  return Rect{middle.x - half, middle.y - 16.0f, middle.x + half, middle.y + 16.0f};
}

void Painter::from_nose_words() {
  const auto box = words_box();
  if (!box) return;
  canvas_.fill(*box, theme_.panel, 6.0f);
  canvas_.text({box->center().x, box->center().y + 9.0f}, view_.from_nose, Face::TextBold,
               theme_.ink, Align::Center, words_share());
}

// Where the antenna points now: a wedge as wide as its doubt.
void Painter::facing() {
  if (!view_.facing) return;
  const double now = degrees_up(*view_.facing);
  const auto half = static_cast<float>(std::max(1.5, view_.facing_error_deg));
  const auto middle = static_cast<float>(now);
  canvas_.sector(center_, inner_ - 4.0f, middle - half, middle + half, theme_.accent, 0.35f);
  constexpr float kDashes = 7.0f;
  const float inner = 0.35f * inner_, outer = inner_ - 4.0f;
  const float step = (outer - inner) / (2.0f * kDashes - 1.0f);
  for (float radius = inner; radius < outer; radius += 2.0f * step) {
    canvas_.line(at(*view_.facing, radius), at(*view_.facing, radius + step), theme_.accent, 5.0f);
  }
  if (!view_.target) return;
  // The way to turn, from there to the target.
  constexpr double kLeast_deg = 6.0;
  const Turn turn = *view_.target - *view_.facing;
  if (turn.size_deg() < kLeast_deg) return;
  const bool right = turn.clockwise_deg() > 0.0;
  const double to = now + turn.clockwise_deg() - (right ? 3.5 : -3.5);
  const float radius = inner_ - 4.0f;
  canvas_.arc(center_, radius, static_cast<float>(right ? now : to),
              static_cast<float>(right ? to : now), theme_.accent, 8.0f);
  arrow_head(now + turn.clockwise_deg() - (right ? 0.5 : -0.5), radius, right, theme_.accent);
}

// The aiming tolerance as a thick band outside, with the degrees at both ends.
void Painter::slack(Bearing<True> target, const Slack& slack) {
  const float middle = band_middle(view_);
  const double to_deg = degrees_up(target);
  canvas_.arc(center_, middle, static_cast<float>(to_deg - slack.left_deg),
              static_cast<float>(to_deg + slack.right_deg), theme_.accent, kBand);
  for (const ToleranceEnd& end : tolerance_ends(view_)) {
    canvas_.text({end.at.x, end.at.y + 9.0f}, end.words, Face::TextBold, theme_.accent,
                 Align::Center, canvas_.usual_share(Face::TextBold));
  }
}

void Painter::target() {
  if (!view_.target) return;
  const Bearing<True> to = *view_.target;
  const float tip = inner_ - 2.0f, neck = tip - 40.0f;
  const double half_head_deg = 16.0 / neck * 180.0 / std::numbers::pi;
  canvas_.line(center_, at(to, neck + 4.0f), theme_.ink, 9.0f);
  const std::array head{at(to, tip), at(to + Turn::clockwise_deg(half_head_deg), neck),
                        at(to - Turn::clockwise_deg(half_head_deg), neck)};
  canvas_.polygon(head, theme_.ink);
  canvas_.line(at(to, tip), at(to, view_.radius + 2.0f), theme_.ink, 3.0f);
  if (view_.slack) slack(to, *view_.slack);
  canvas_.line(at(to, view_.radius + 2.0f), at(to, view_.radius + 30.0f), theme_.ink, 5.0f);
}

// The interferer as a barred line with the null's width, and a hollow arrow where to aim instead.
void Painter::null() {
  if (!view_.null) return;
  const Bearing<True> from = view_.null->interferer, aim = view_.null->heading;
  const float outer = inner_ - 4.0f, inner = 0.42f * inner_;
  const double half_deg = view_.null->width_deg / 2.0;
  for (const double side_deg : {-half_deg, half_deg}) {
    const Bearing<True> edge = from + Turn::clockwise_deg(side_deg);
    canvas_.line(at(edge, inner), at(edge, outer), theme_.warning, 2.0f);
  }
  constexpr int kBars = 4;
  for (int bar = 0; bar < kBars; ++bar) {
    const float radius = inner + (outer - inner) * static_cast<float>(bar) / (kBars - 1);
    canvas_.arc(center_, radius, static_cast<float>(degrees_up(from) - half_deg),
                static_cast<float>(degrees_up(from) + half_deg), theme_.warning, 3.0f);
  }
  if (view_.target && (*view_.target - aim).size_deg() < 1.0) return;
  const float tip = inner_ - 2.0f, neck = tip - 40.0f;
  const double half_head_deg = 16.0 / neck * 180.0 / std::numbers::pi;
  const std::array head{at(aim, tip), at(aim + Turn::clockwise_deg(half_head_deg), neck),
                        at(aim - Turn::clockwise_deg(half_head_deg), neck)};
  canvas_.polyline(head, theme_.ink, 3.0f, true);
  canvas_.line(at(aim, 0.5f * neck), at(aim, neck), theme_.ink, 3.0f);
}

}  // namespace

std::vector<ToleranceEnd> tolerance_ends(const DialView& view) {
  if (!view.target || !view.slack || view.slack->all_round()) return {};
  const double to_deg = (*view.target - view.up).clockwise_deg();
  std::vector<ToleranceEnd> ends;
  for (const double degrees : {-view.slack->left_deg, view.slack->right_deg}) {
    // Past the end of the band, clear of the ring.
    const double beyond =
        std::copysign(20.0 / band_middle(view) * 180.0 / std::numbers::pi, degrees);
    ends.push_back({around(view.center, view.radius + 34.0f, to_deg + degrees + beyond),
                    std::to_string(std::lround(std::fabs(degrees))) + "°"});
  }
  return ends;
}

void draw_dial(Ui& ui, const DialView& view) {
  Painter painter(ui, view);
  painter.true_ring();
  painter.compass_ring();
  painter.rig_ring();
  painter.pattern();
  painter.surroundings();
  painter.facing();
  painter.from_nose();
  painter.null();
  painter.target();
  painter.rig();
  painter.from_nose_words();
}

}  // namespace mastwise::ui
