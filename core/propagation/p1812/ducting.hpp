#pragma once

#include "core/propagation/p1812/p1812.hpp"

namespace mastwise::p1812 {

// Ducting and layer reflection (section 4.5). The functions read the path's earlier results of
// `analyze_path`: distances, horizons, heights, zones, beta0.

// Af (47)-(49): fixed coupling losses between the antennas and the layer, dB.
double fixed_coupling_loss_db(const Path& path, double transmitter_coast_km,
                              double receiver_coast_km);

// theta' (52): angular distance with the horizon angles limited, mrad.
double limited_angular_distance_mrad(const Path& path);

// beta (54)-(56): incidence of ducting along this path, percent.
double path_incidence_percent(const Path& path);

// Gamma (53a).
double time_slope(double incidence_percent, double distance_km);

// Lba (46) at p percent of time, dB.
double ducting_loss_db(const Path& path, double time_percent);

}  // namespace mastwise::p1812
