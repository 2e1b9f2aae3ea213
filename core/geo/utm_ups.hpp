#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"

#include <string>

namespace mastwise {

// A position on the standard UTM or UPS grid.
struct UtmUps {
  int zone;  // 1 to 60; 0 is UPS
  bool north;
  double easting_m;
  double northing_m;
  Convergence convergence;
};

// Source: GeographicLib::UTMUPS, standard zone.
UtmUps to_utm_ups(Position position);

// Whether "S" after the zone of these UTM coordinates is ambiguous: south, or band S of MGRS (32 to
// 40 degrees north). Only such a place is written with the word "south".
bool south_looks_like_band(int zone, double easting_m, double northing_m);

// "19N", "56S", "UPS N".
std::string zone_name(int zone, bool north);

}  // namespace mastwise
