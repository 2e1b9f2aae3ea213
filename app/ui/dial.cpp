#include "app/ui/dial.hpp"

#include "app/ui/rig_symbol.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace mastwise::ui {
namespace {

class Painter {
 public:
  Painter(Ui& ui, const DialView& view)
      : canvas_(ui.canvas()), theme_(ui.theme()), view_(view), center_(view.center) {}

  void ring();
  void north_marks();
  void others();
  void pattern();
  void rig();
  void facing();
  void target();
  void slack(Bearing<True> target, const Slack& slack);

 private:
  Point at(Bearing<True> bearing, float radius) const {
    return around(center_, radius, (bearing - view_.up).clockwise_deg());
  }
  void tick(int degrees);
  void kite(Bearing<True> bearing, bool filled, const char* label);
  bool near_target(Bearing<True> bearing, double within_deg) const {
    return view_.target && (*view_.target - bearing).size_deg() < within_deg;
  }

  Canvas& canvas_;
  const Theme& theme_;
  const DialView& view_;
  Point center_;
};

void Painter::tick(int degrees) {
  const bool hour = degrees % 30 == 0, ten = degrees % 10 == 0;
  const float length = hour ? 24.0f : ten ? 14.0f : 7.0f;
  const float width = hour ? 3.5f : ten ? 2.0f : 1.3f;
  const auto bearing = Bearing<True>::degrees(degrees);
  const float outer = view_.radius - 2.0f;
  canvas_.line(at(bearing, outer - length), at(bearing, outer), theme_.ink, width);
  if (!hour) return;
  static constexpr std::array<const char*, 4> kCardinals{"N", "E", "S", "W"};
  const bool cardinal = degrees % 90 == 0;
  const Point middle = at(bearing, view_.radius - 50.0f);
  const std::string label =
      cardinal ? kCardinals[static_cast<std::size_t>(degrees / 90)] : std::to_string(degrees);
  canvas_.text({middle.x, middle.y + (cardinal ? 12.0f : 8.5f)}, label,
               cardinal ? Face::Cardinal : Face::Word, theme_.ink, Align::Center);
}

void Painter::ring() {
  canvas_.disc(center_, view_.radius, theme_.panel);
  canvas_.circle(center_, view_.radius, theme_.rule, 2.0f);
  constexpr int kStep = 5;
  for (int degrees = 0; degrees < 360; degrees += kStep) tick(degrees);
}

// A filled kite is true north, a hollow one magnetic north.
void Painter::kite(Bearing<True> bearing, bool filled, const char* label) {
  constexpr float kInner = 18.0f, kMiddle = 33.0f, kOuter = 48.0f, kHalfWidth = 13.0f;
  const double across_deg = std::atan2(kHalfWidth, view_.radius + kMiddle) * 180.0 / M_PI;
  const std::array corners{at(bearing, view_.radius + kInner),
                           at(bearing + Turn::clockwise_deg(across_deg), view_.radius + kMiddle),
                           at(bearing, view_.radius + kOuter),
                           at(bearing - Turn::clockwise_deg(across_deg), view_.radius + kMiddle)};
  if (filled) {
    canvas_.polygon(corners, theme_.ink);
  } else {
    canvas_.polyline(corners, theme_.ink, 3.0f, true);
  }
  // The label is on the side away from the other north, if there is room above the ring.
  const Turn from_top = bearing - view_.up;
  const bool to_left = view_.declination && (filled ? view_.declination->east_deg() > 0.0
                                                    : view_.declination->east_deg() <= 0.0);
  if (from_top.size_deg() > 40.0) return;
  const Point place = at(bearing, view_.radius + 36.0f);
  canvas_.text({place.x + (to_left ? -24.0f : 24.0f), place.y + 2.0f}, label, Face::Small,
               theme_.second_ink, to_left ? Align::Right : Align::Left);
}

void Painter::north_marks() {
  const auto north = Bearing<True>::degrees(0.0);
  kite(north, true, "true north");
  if (view_.declination) {
    kite(to_true(Bearing<Magnetic>::degrees(0.0), *view_.declination), false, "magnetic north");
  }
}

void Painter::others() {
  constexpr double kApart_deg = 12.0;
  std::vector<Bearing<True>> placed;
  for (const DialView::Mark& mark : view_.others) {
    const auto crowds = [&](Bearing<True> other) {
      return (other - mark.bearing).size_deg() < kApart_deg;
    };
    bool room = !near_target(mark.bearing, kApart_deg);
    for (const Bearing<True> other : placed) room = room && !crowds(other);
    if (!room) continue;
    placed.push_back(mark.bearing);
    const Point dot = at(mark.bearing, view_.radius - 96.0f);
    if (mark.wanted) {
      canvas_.disc(dot, 10.0f, theme_.accent);
    } else {
      canvas_.circle(dot, 9.0f, theme_.ink, 3.0f);
    }
    canvas_.text({dot.x, dot.y + 27.0f}, mark.label, Face::Small, theme_.ink, Align::Center);
  }
}

void Painter::rig() {
  draw_rig(canvas_, theme_, center_,
           view_.nose ? std::optional(view_.nose->nose() - view_.up) : std::nullopt);
}

// Full response reaches most of the way to the ring; 24 dB below it is the middle.
void Painter::pattern() {
  if (view_.pattern_db.empty() || !view_.target) return;
  constexpr double kDepth_db = 24.0;
  const float reach = view_.radius * 0.66f;
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

void Painter::facing() {
  if (!view_.facing) return;
  constexpr float kDashes = 9.0f;
  const float inner = 100.0f, outer = view_.radius - 82.0f;
  const float step = (outer - inner) / (2.0f * kDashes - 1.0f);
  for (float radius = inner; radius < outer; radius += 2.0f * step) {
    canvas_.line(at(*view_.facing, radius), at(*view_.facing, radius + step), theme_.accent, 5.0f);
  }
}

// The aiming tolerance, with the degrees at both ends.
void Painter::slack(Bearing<True> target, const Slack& slack) {
  constexpr float kBand = 13.0f;
  const float middle = view_.radius + 3.0f + kBand / 2.0f;
  const double to_deg = (target - view_.up).clockwise_deg();
  canvas_.arc(center_, middle, static_cast<float>(to_deg - slack.left_deg),
              static_cast<float>(to_deg + slack.right_deg), theme_.accent, kBand);
  if (slack.all_round()) return;
  const auto label = [&](Turn from_target, double degrees) {
    constexpr float kBeyond = 4.5f;  // degrees past the end of the band
    const auto past = Turn::clockwise_deg(from_target.clockwise_deg() +
                                          std::copysign(kBeyond, from_target.clockwise_deg()));
    const Point place = at(target + past, view_.radius + 22.0f);
    canvas_.text({place.x, place.y + 7.0f}, std::to_string(std::lround(degrees)) + "°", Face::Small,
                 theme_.second_ink, Align::Center);
  };
  label(Turn::clockwise_deg(-slack.left_deg), slack.left_deg);
  label(Turn::clockwise_deg(slack.right_deg), slack.right_deg);
}

void Painter::target() {
  if (!view_.target) return;
  constexpr double kHead_deg = 4.2;
  const Bearing<True> to = *view_.target;
  const float tip = view_.radius - 4.0f, neck = tip - 44.0f;
  canvas_.line(center_, at(to, neck + 4.0f), theme_.ink, 8.0f);
  const std::array head{at(to, tip), at(to + Turn::clockwise_deg(kHead_deg), neck),
                        at(to - Turn::clockwise_deg(kHead_deg), neck)};
  canvas_.polygon(head, theme_.ink);
  if (view_.slack) {
    slack(to, *view_.slack);
  } else {
    canvas_.line(at(to, view_.radius + 3.0f), at(to, view_.radius + 27.0f), theme_.accent, 14.0f);
  }
}

}  // namespace

void draw_dial(Ui& ui, const DialView& view) {
  Painter painter(ui, view);
  painter.ring();
  painter.north_marks();
  painter.pattern();
  painter.others();
  painter.facing();
  painter.target();
  painter.rig();
}

}  // namespace mastwise::ui
