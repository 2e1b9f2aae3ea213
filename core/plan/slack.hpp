#pragma once

#include "core/angles/bearing.hpp"
#include "core/reception/chance_curve.hpp"

#include <optional>
#include <vector>

namespace mastwise {

// The default chance at which a heading counts as bringing a station: the lowest that is called
// "likely". With a lower one, a plan would promise what fails on two evenings of five; at 90 % it
// would omit most of what a traveler does watch.
inline constexpr double kUsualFloor_percent = 70.0;

// An arc of headings, including its ends.
struct HeadingArc {
  Bearing<True> from;
  double length_deg = 0.0;  // clockwise; 360 for the full circle
  bool all_round() const { return length_deg >= 360.0; }
  bool operator==(const HeadingArc&) const = default;
};

// The arcs where the values, linear between whole degrees, are at least `floor`: sorted clockwise
// by their beginnings, without touching. The ends are where the straight lines cross it.
std::vector<HeadingArc> arcs_above(const reception::ChanceCurve::Values& values, double floor);

// The aiming tolerance of a heading.
struct Slack {
  double left_deg = 0.0;   // anticlockwise seen from above
  double right_deg = 0.0;  // clockwise
  // Both are 180 if no heading is worse.
  bool all_round() const { return left_deg + right_deg >= 360.0; }
  bool operator==(const Slack&) const = default;
};

// The aiming tolerance within the arc that contains the heading, even if an end misses it by less
// than a billionth of a degree; std::nullopt if no arc contains it.
std::optional<Slack> slack_within(const std::vector<HeadingArc>& arcs, Bearing<True> heading);

// How far the antenna may be turned to either side of the heading, beyond the error that the curve
// is averaged over, until the chance falls below the floor; std::nullopt if it is below at the
// heading itself. A larger error never gives a larger tolerance (ChanceCurve::assured_percent).
std::optional<Slack> slack(const reception::ChanceCurve& curve, Bearing<True> heading,
                           double floor_percent = kUsualFloor_percent);

// Smaller differences are displayed as the same chance: within it, the top of a curve is flat.
inline constexpr double kFlat_percent = 0.5;

// The heading with the best chance: the middle of the flat top. If several tops are alike, such as
// the two faces of a bidirectional antenna, the one nearest to the station's bearing; the bearing
// itself if all headings are alike.
Bearing<True> best_heading(const reception::ChanceCurve& curve);

}  // namespace mastwise
