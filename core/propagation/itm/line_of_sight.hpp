#pragma once

#include "core/propagation/itm/itm.hpp"

namespace mastwise::itm {

// A_los(s) in dB: two rays, weighted with the diffraction line. Needs the path's terminals, sums
// and diffraction fit; `distance_m` is above 0. Source: Algorithm (4.43) to (4.51).
double line_of_sight_db(const Path& path, double distance_m);

// The curve of (4.1) within d_Ls, through three points of A_los and the diffraction line.
// Source: Algorithm (4.23) to (4.42).
LineOfSightFit fit_line_of_sight(const Path& path);

}  // namespace mastwise::itm
