#pragma once

#include "core/geo/position.hpp"

#include <vector>

namespace mastwise {

// A rectangle in degrees; west <= east.
struct Box {
  double south_deg;
  double north_deg;
  double west_deg;
  double east_deg;
};

// One or two boxes (two across the antimeridian) that contain every point within a geodesic
// distance. The bounds are those of the circle on the auxiliary sphere of reduced latitudes. A
// geodesic of length s spans at most s/b there, with b the polar semi-axis; a difference of
// longitude on the ellipsoid is at most that on the sphere [C. F. F. Karney, Algorithms for
// geodesics, J. Geodesy 87 (2013), equations 7 and 8].
std::vector<Box> boxes_around(const Position& center, double distance_m);

}  // namespace mastwise
