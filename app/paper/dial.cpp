#include "app/paper/sections.hpp"
#include "app/ui/rig_shape.hpp"
#include "app/words/units.hpp"

#include <array>
#include <cmath>
#include <numbers>

// The dial on paper: true north at the top, as on the map.
namespace mastwise::paper {
namespace {

constexpr Style kCardinal{13.0, Weight::Bold};
constexpr Style kDegrees{7.5};

class Dial {
 public:
  Dial(Pen& pen, const PaperCard& card, Spot center, double radius_pt)
      : pen_(pen), card_(card), center_(center), radius_(radius_pt) {}

  void ring();
  void norths();
  void slack();
  void target();
  void rig();

 private:
  Spot at(double bearing_deg, double radius_pt) const {
    return around(center_, radius_pt, bearing_deg);
  }
  void tick(int degrees);
  void kite(double bearing_deg, bool filled, const char* label, bool to_left);

  Pen& pen_;
  const PaperCard& card_;
  Spot center_;
  double radius_;
};

void Dial::tick(int degrees) {
  const bool hour = degrees % 30 == 0, ten = degrees % 10 == 0;
  const double length = hour ? 8.0 : ten ? 5.0 : 2.6;
  pen_.line(at(degrees, radius_ - length), at(degrees, radius_), hour ? 1.1 : ten ? 0.7 : 0.45);
  // The labels give way to the target.
  constexpr double kGiveWay_deg = 10.0;
  const Turn from_target = card_.aim.bearing_true - Bearing<True>::degrees(degrees);
  if (!hour || from_target.size_deg() < kGiveWay_deg) return;
  static constexpr std::array<const char*, 4> kCardinals{"N", "E", "S", "W"};
  const bool cardinal = degrees % 90 == 0;
  const Style& style = cardinal ? kCardinal : kDegrees;
  const Spot middle = at(degrees, radius_ - 17.0);
  pen_.text({middle.x, middle.y + 0.36 * style.size_pt},
            cardinal ? kCardinals[static_cast<std::size_t>(degrees / 90)] : std::to_string(degrees),
            style, Align::Center);
}

void Dial::ring() {
  pen_.circle(center_, radius_, 0.9);
  constexpr int kStep_deg = 5;
  for (int degrees = 0; degrees < 360; degrees += kStep_deg) tick(degrees);
}

// A filled kite is true north, a hollow one magnetic north.
void Dial::kite(double bearing_deg, bool filled, const char* label, bool to_left) {
  constexpr double kInner = 9.0, kMiddle = 14.5, kOuter = 20.0, kHalfWidth = 4.2;
  const double across_deg = std::atan2(kHalfWidth, radius_ + kMiddle) * 180.0 / std::numbers::pi;
  std::vector<Spot> corners{
      at(bearing_deg, radius_ + kInner), at(bearing_deg + across_deg, radius_ + kMiddle),
      at(bearing_deg, radius_ + kOuter), at(bearing_deg - across_deg, radius_ + kMiddle)};
  if (filled) {
    pen_.polygon(corners, 0.0);
  } else {
    pen_.polyline(corners, 1.0, true);
  }
  // Written beside it only if there is room above the ring.
  constexpr double kTop_deg = 25.0;
  if (std::fabs(fold_half_circle_deg(bearing_deg)) > kTop_deg) return;
  const Spot place = at(bearing_deg, radius_ + kMiddle);
  pen_.text({place.x + (to_left ? -8.0 : 8.0), place.y + 2.0}, label, kSmallGray,
            to_left ? Align::Right : Align::Left);
}

void Dial::norths() {
  const double east_deg = card_.aim.field.declination.east_deg();
  kite(0.0, true, "true north", east_deg > 0.0);
  if (card_.aim.field.zone == MagneticField::Zone::Blackout) return;
  kite(to_true(Bearing<Magnetic>::degrees(0.0), card_.aim.field.declination).degrees(), false,
       "magnetic north", east_deg <= 0.0);
}

// The band within which the antenna may point, with its degrees at both ends.
void Dial::slack() {
  if (!card_.slack) return;
  constexpr double kBand = 4.0, kLabelAt = 13.0, kBeyond_deg = 5.0, kGray = 0.35;
  const double to_deg = card_.aim.bearing_true.degrees();
  const Slack& slack = *card_.slack;
  pen_.arc(center_, radius_ + 1.5 + 0.5 * kBand, to_deg - slack.left_deg, to_deg + slack.right_deg,
           kBand, kGray);
  if (slack.all_round()) return;
  // They give way to the north marks; the text beside the dial repeats them.
  constexpr double kGiveWay_deg = 22.0;
  const auto near_north = [&](Bearing<True> place) {
    const auto needle = to_true(Bearing<Magnetic>(), card_.aim.field.declination);
    return (place - Bearing<True>()).size_deg() < kGiveWay_deg ||
           (place - needle).size_deg() < kGiveWay_deg;
  };
  const auto label = [&](double beyond_deg, double degrees) {
    if (near_north(Bearing<True>::degrees(to_deg + beyond_deg))) return;
    const Spot place = at(to_deg + beyond_deg, radius_ + kLabelAt);
    pen_.text({place.x, place.y + 2.5}, words::whole_degrees(degrees), kSmallGray, Align::Center);
  };
  label(-slack.left_deg - kBeyond_deg, slack.left_deg);
  label(slack.right_deg + kBeyond_deg, slack.right_deg);
}

void Dial::target() {
  constexpr double kHead_pt = 15.0, kHead_deg = 4.4;
  const double to_deg = card_.aim.bearing_true.degrees();
  const double tip = radius_ - 1.5, neck = tip - kHead_pt;
  pen_.line(center_, at(to_deg, neck + 1.0), 2.4);
  pen_.polygon({at(to_deg, tip), at(to_deg + kHead_deg, neck), at(to_deg - kHead_deg, neck)}, 0.0);
}

void Dial::rig() {
  constexpr double kDot_pt = 3.0, kWhite = 1.0, kLine_pt = 1.2;
  if (!card_.aim.rig_angle) {
    pen_.disc(center_, 3.5 * kDot_pt, kWhite);
    pen_.circle(center_, 3.5 * kDot_pt, kLine_pt);
    pen_.disc(center_, kDot_pt, 0.0);
    return;
  }
  const double nose_deg = card_.aim.bearing_true.degrees() - card_.aim.rig_angle->clockwise_deg();
  const Spot forward = around({}, 1.0, nose_deg);
  const double scale = radius_ / static_cast<double>(ui::kRigDialRadius);
  const auto places = [&](const auto& shape) {
    std::vector<Spot> spots;
    for (const ui::RigPoint& point : shape) {
      const double ahead = scale * static_cast<double>(point.ahead);
      const double right = scale * static_cast<double>(point.right);
      spots.push_back({center_.x + ahead * forward.x - right * forward.y,
                       center_.y + ahead * forward.y + right * forward.x});
    }
    return spots;
  };
  pen_.polygon(places(ui::kRigOutline), kWhite);
  pen_.polyline(places(ui::kRigOutline), kLine_pt, true);
  pen_.polyline(places(ui::kRigWindscreen), kLine_pt, false);
  pen_.disc(center_, kDot_pt, 0.0);
}

}  // namespace

void draw_dial(Pen& pen, const PaperCard& card, Spot center, double radius_pt) {
  Dial dial(pen, card, center, radius_pt);
  dial.ring();
  dial.norths();
  dial.slack();
  dial.target();
  dial.rig();
}

}  // namespace mastwise::paper
