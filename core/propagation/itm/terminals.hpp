#pragma once

#include "core/propagation/itm/itm.hpp"
#include "core/propagation/itm/relief.hpp"

namespace mastwise::itm {

// Fills in horizons, Delta h and effective heights of a point-to-point path whose wave number,
// earth curvature, distance and structural heights are set. Source: TR 82-100, preparation for the
// point-to-point mode.
void place_on_profile(Path& path, const TerrainProfile& profile, const Relief& relief);

// Fills in effective heights and horizons of an area path. Source: Algorithm (3.1) to (3.4).
void place_in_area(Path& path, const AreaTerrain& terrain);

// Fills in d_Ls, d_L and theta_e. Source: Algorithm (3.5) to (3.8).
void sum_terminals(Path& path);

}  // namespace mastwise::itm
