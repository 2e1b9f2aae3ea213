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

// The line from one averaged position to another, each with an uncertainty of `position_error_m`
// (over 0; 3 m is usual in the open). Error: atan(sqrt(2) s / L), since both ends are uncertain.
// Refused if the points are at most sqrt(2) s apart: then the line has no direction. Source:
// propagation of independent errors; the figure of 3 m is common practice, no source.
Result<UnsureBearing> walked_bearing(Position from, Position to, double position_error_m);

// Length of a walk, meters, for a line with an error of at most `wanted_error_deg` (over 0, under
// 45): sqrt(2) s / tan(error).
Result<double> walk_for_error_m(double wanted_error_deg, double position_error_m);

// The direction to a landmark whose position is known within `error_m` (over 0), which includes the
// error of the stop's position: atan(error / distance). Refused if the landmark is no farther away
// than its error.
Result<UnsureBearing> landmark_bearing(Position from, Position landmark, double error_m);

// The place to walk to from `start` to follow `bearing`; `distance_m` over 0.
Result<Position> line_target(Position start, Bearing<True> bearing, double distance_m);

// A walker's position relative to the line from `start` on `bearing`.
struct OnLine {
  double along_m;     // how far along it, from the start
  double right_of_m;  // how far to its right; left is negative: steer back toward the line
};

// Exact within a millimeter for walks of up to 5 km (the flat triangle omits d^3 / 6 R^2). Source:
// the geodesic to the walker, split at the start (path_between()).
OnLine on_line(Position start, Bearing<True> bearing, Position walker);

}  // namespace mastwise
