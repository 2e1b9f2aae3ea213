#pragma once

#include "core/landcover/cover_source.hpp"
#include "core/terrain/profile.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::landcover {

// Fills `heights_m` with the representative clutter height (added_height_m, meters) at each point
// of a profile that terrain::cut_profile filled, its ends included, as many as profile.heights_m;
// NaN where the cover is unknown. Returns the number of points with a height. The points are those
// of the profile itself, so no geodesic is solved again. A path that crosses no tile costs one
// look-up for each cell. A buffer: refilling allocates nothing after the longest path. Any thread
// may call it with separate arguments.
std::size_t clutter_along(const CoverSource& cover, const terrain::PathProfile& profile,
                          std::vector<double>& heights_m);

}  // namespace mastwise::landcover
