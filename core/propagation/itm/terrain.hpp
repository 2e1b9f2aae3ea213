#pragma once

#include "core/propagation/itm/itm.hpp"
#include "core/propagation/itm/relief.hpp"

#include <array>
#include <span>

namespace mastwise::itm {

struct Horizon {
  double distance_m;
  double angle_rad;  // above the horizontal at the terminal
};

// The radio horizons of transmitter and receiver; on a line-of-sight path each terminal is the
// other's horizon. Needs the path's structural heights and earth curvature; `relief` is that of the
// profile's heights. Source: TR 82-100, horizons from a terrain profile.
std::array<Horizon, 2> horizons(const Path& path, const TerrainProfile& profile,
                                const Relief& relief);

// z_s: the mean height of the middle 80 % of the profile.
// Source: TR 82-100, average terrain elevation for (1.2).
double mean_elevation_m(std::span<const double> heights_m);

struct Ends {
  double first_m;
  double last_m;
};

// Least-squares line through the heights between two positions, returned as its heights at both
// ends of the profile. Positions count intervals from the first height, 0 <= from <= to <=
// intervals. Source: TR 82-100, effective heights in the point-to-point mode.
Ends fitted_line(std::span<const double> heights_m, double from, double to);

// Delta h: the range of heights about their trend between two positions, in intervals, without the
// highest and the lowest tenth, extrapolated to an infinite stretch. Source: Algorithm (3.9).
double irregularity_m(const TerrainProfile& profile, double from, double to);

}  // namespace mastwise::itm
