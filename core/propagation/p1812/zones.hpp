#pragma once

#include "core/propagation/p1812/p1812.hpp"
#include "core/propagation/p1812/profile_scan.hpp"

#include <span>

namespace mastwise::p1812 {

// Shares of the zones in the path (section 3.6 and table 5). A point's zone reaches half way to its
// neighbors.
struct ZoneShares {
  double sea_fraction = 0.0;       // omega, of the path's length
  double longest_land_km = 0.0;    // dtm: longest unbroken stretch of inland and coastal land
  double longest_inland_km = 0.0;  // dlm: longest unbroken stretch of inland
};

// `zones` has one value for each point of the section, or none: all inland.
ZoneShares share_zones(const Section& section, std::span<const Zone> zones);

}  // namespace mastwise::p1812
