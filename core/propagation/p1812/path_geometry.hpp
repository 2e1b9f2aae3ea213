#pragma once

#include "core/propagation/p1812/p1812.hpp"
#include "core/propagation/p1812/profile_scan.hpp"

namespace mastwise::p1812 {

// Path profile analysis (attachment 1): each function stores its results in the path and reads
// those of the functions above it. `bare` is the view of the ground without clutter, `antennas` are
// the altitudes hts and hrs.

// The profile points of the horizons.
struct HorizonPoints {
  std::size_t transmitter = 0;
  std::size_t receiver = 0;
};

// Whether the path is in line of sight, horizon angles and distances and the angular distance
// (section 4; (74)-(82)).
// `bulge` is 500 Ce at the median radius.
HorizonPoints find_horizons(const Section& section, const double* heights_m, Line antennas,
                            double bulge, const Outlook& bare, Path& path);

// The smooth surface through the terrain, and the heights over it for diffraction and ducting
// (section 5; (83)-(92)).
void fit_smooth_surface(const GroundSums& sums, double first_height_m, double last_height_m,
                        const Obstacles& bare, Path& path);

// hm (93): the greatest roughness of the terrain over the smooth surface between the horizons, m.
double terrain_roughness_m(const Section& section, const double* heights_m, HorizonPoints horizons,
                           const Path& path);

}  // namespace mastwise::p1812
