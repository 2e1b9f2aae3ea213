#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

// Directions without a compass: a line walked with a satellite receiver, and a landmark.
namespace mastwise {

// A direction with its error, one standard deviation.
struct UnsureBearing {
  Bearing<True> bearing;
  double error_deg;
  double distance_m;
};

// The line from one averaged position to another, each of which is `position_error_m` unsure (over
// 0; 3 m is usual in the open). Error: atan(sqrt(2) s / L), since both ends are unsure. Refused
// where the points lie no farther apart than sqrt(2) s: then the line has no direction.
// Source: propagation of independent errors; the figure of 3 m is common practice, no source.
Result<UnsureBearing> walked_bearing(Position from, Position to, double position_error_m);

// How far to walk for a line no more than `wanted_error_deg` unsure (over 0, under 45):
// sqrt(2) s / tan(error), meters.
Result<double> walk_for_error_m(double wanted_error_deg, double position_error_m);

// The direction to a landmark whose place is known within `error_m` (over 0), the error of the
// stop's own place included: atan(error / distance). Refused where the landmark is no farther off
// than its error.
Result<UnsureBearing> landmark_bearing(Position from, Position landmark, double error_m);

// Where to walk to from `start` so that the line walked lies on `bearing`: `distance_m` over 0.
Result<Position> line_target(Position start, Bearing<True> bearing, double distance_m);

// How a walker stands to the line from `start` on `bearing`.
struct OnLine {
  double along_m;     // how far along it, from the start
  double right_of_m;  // how far to its right; left is negative: steer back the other way
};

// Within a millimeter for walks of up to 5 km (the flat triangle leaves out d^3 / 6 R^2).
// Source: the geodesic to the walker, taken apart at the start (path_between()).
OnLine on_line(Position start, Bearing<True> bearing, Position walker);

}  // namespace mastwise
