#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"

namespace mastwise {

// The shortest path over the WGS84 ellipsoid.
struct PathBetween {
  double distance_m;
  Bearing<True> bearing;         // at the start, toward the end
  Bearing<True> bearing_at_end;  // at the end, onward in the same direction
  bool operator==(const PathBetween&) const = default;
};

// The path between two positions. If they coincide, distance_m is 0 and both bearings are 0 and
// meaningless. From a pole the bearing counts from the meridian of that position's longitude.
// Between antipodes, where many paths are equally short, the result is one of them. Accuracy: 15
// nm. Source: GeographicLib::Geodesic (Karney 2013, doi 10.1007/s00190-012-0578-z).
PathBetween path_between(Position from, Position to);

// The position reached from `from` on the bearing after `distance_m` meters (finite; negative goes
// backward). Same source and accuracy.
Position destination(Position from, Bearing<True> bearing, double distance_m);

}  // namespace mastwise
