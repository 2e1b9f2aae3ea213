#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"

#include <string>

namespace mastwise {

// The standard map grid at a place.
struct GridZone {
  std::string name;         // "19N": UTM zone and hemisphere; at the poles "UPS N" or "UPS S"
  Convergence convergence;  // grid north relative to true north at that place
  bool operator==(const GridZone&) const = default;
};

// The standard UTM zone (with the exceptions of Norway and Svalbard), or UPS from 84 N and south of
// 80 S. At a pole the meridian is that of the position's longitude. Source: GeographicLib::UTMUPS;
// close to the central meridian lon0 the convergence is atan(tan(lon - lon0) sin lat).
GridZone grid_zone_at(Position position);

}  // namespace mastwise
