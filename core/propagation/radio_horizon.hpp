#pragma once

#include <algorithm>
#include <cmath>

namespace mastwise {

// How far two antennas `h1_m` and `h2_m` above smooth ground see each other by radio, in metres, on
// an earth of 4/3 radius: 4.12 km (sqrt h1 + sqrt h2). Heights below the ground count as 0.
// Source: d = sqrt(2 k a h), k = 4/3 and a = 6371 km (Recommendation ITU-R P.310, definitions).
inline double radio_horizon_m(double h1_m, double h2_m) {
  constexpr double kMetresPerRootMetre = 4120.0;
  return kMetresPerRootMetre * (std::sqrt(std::max(0.0, h1_m)) + std::sqrt(std::max(0.0, h2_m)));
}

}  // namespace mastwise
