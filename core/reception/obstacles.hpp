#pragma once

#include "core/reception/prospect.hpp"
#include "core/terrain/profile.hpp"

namespace mastwise::reception {

// Effective earth radius for straight rays in an ordinary atmosphere, 4/3 of 6,371 km
// [Recommendation ITU-R P.310, definitions].
inline constexpr double kRayEarthRadius_m = 4.0 / 3.0 * 6'371'000.0;

// Height of that earth's curve above the chord between two places.
inline double bulge_m(double from_one_m, double from_other_m) {
  return from_one_m * from_other_m / (2.0 * kRayEarthRadius_m);
}

// Loss of a single knife edge `above_line_m` over the straight line, between antennas at `near_m`
// and `far_m` from it (positive), in dB; 0 for edges well below the line.
// Source: Recommendation ITU-R P.526 section 4.1, (26) and (31).
double edge_loss_db(double above_line_m, double near_m, double far_m, double frequency_mhz);

// The obstacles of a path, worst first: the worst edge between the antennas if it costs
// kLeastObstacle_db or more. If that edge is above the line, also the worst edges on both sides
// that are above the line between it and the antenna, each as a single knife edge (Deygout's
// construction, known from earlier versions of Recommendation ITU-R P.526). `profile` is complete
// and runs from the station to the stop; antenna heights above mean sea level in m.
inline constexpr double kLeastObstacle_db = 3.0;
Obstacles find_obstacles(const terrain::PathProfile& profile, double station_antenna_amsl_m,
                         double stop_antenna_amsl_m, double frequency_mhz);

}  // namespace mastwise::reception
