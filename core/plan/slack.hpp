#pragma once

#include "core/angles/bearing.hpp"
#include "core/reception/chance_curve.hpp"

#include <optional>
#include <vector>

namespace mastwise {

// The chance at which a heading still counts as bringing a station, where nothing else is chosen:
// the least that is called "likely". Lower, a plan would promise what fails on two evenings of
// five; at 90 % it would leave out most of what a traveler does watch.
inline constexpr double kUsualFloor_percent = 70.0;

// A stretch of headings, its ends included.
struct HeadingArc {
  Bearing<True> from;
  double length_deg = 0.0;  // clockwise; 360 all round
  bool all_round() const { return length_deg >= 360.0; }
  bool operator==(const HeadingArc&) const = default;
};

// Where the values, straight between whole degrees, are at least `floor`: clockwise by their
// beginnings, not touching each other. The ends lie where the straight lines cross it.
std::vector<HeadingArc> arcs_above(const reception::ChanceCurve::Values& values, double floor);

// How far an antenna may be turned from a heading.
struct Slack {
  double left_deg = 0.0;   // anticlockwise seen from above
  double right_deg = 0.0;  // clockwise
  // Both are 180 where no heading is worse.
  bool all_round() const { return left_deg + right_deg >= 360.0; }
  bool operator==(const Slack&) const = default;
};

// The slack within the arc that has the heading in it, an end off by less than a billionth of a
// degree counting as met; nothing where none has.
std::optional<Slack> slack_within(const std::vector<HeadingArc>& arcs, Bearing<True> heading);

// How far to either side of the heading the averaged chance stays at or above the floor; nothing
// where it is below at the heading itself.
std::optional<Slack> slack(const reception::ChanceCurve& curve, Bearing<True> heading,
                           double floor_percent = kUsualFloor_percent);

// What is less apart is shown as the same chance: the top of a curve is flat within it.
inline constexpr double kFlat_percent = 0.5;

// The heading with the best chance: the middle of the flat top. Of several tops alike, the two
// faces of a bidirectional antenna, the one nearest to where the station lies; that itself where
// all headings are alike.
Bearing<True> best_heading(const reception::ChanceCurve& curve);

}  // namespace mastwise
