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

// "19N", "56S", "UPS N".
std::string zone_name(int zone, bool north);

}  // namespace mastwise
