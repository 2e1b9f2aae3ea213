#pragma once

#include <algorithm>

namespace mastwise::safety {

// Distances to keep from overhead lines, in meters.
struct KeepOut {
  double least_m = 0.0;    // from any line
  double unknown_m = 0.0;  // from a line whose voltage is not known
  bool operator==(const KeepOut&) const = default;
};

// 10 ft and 20 ft: 29 CFR 1926.1408 table A, lines to 50 kV and, where the voltage is not known, to
// 350 kV.
inline constexpr double kLeastFromLine_m = 10 * 0.3048;
inline constexpr double kLeastFromUnknownLine_m = 20 * 0.3048;

// The distances for an antenna whose top is this high above the ground when raised, in meters, at
// least 0. One and a half times the height: US CPSC 2002 (antennas and masts).
inline KeepOut keep_out(double raised_height_m) {
  constexpr double kTimesHeight = 1.5;
  const double by_height_m = kTimesHeight * raised_height_m;
  return {.least_m = std::max(kLeastFromLine_m, by_height_m),
          .unknown_m = std::max(kLeastFromUnknownLine_m, by_height_m)};
}

}  // namespace mastwise::safety
