#pragma once

#include "core/terrain/tile.hpp"

#include <filesystem>
#include <vector>

namespace mastwise::platform {

// Neighboring tiles share their outer rows and columns. Where one of two neighbors knows a height
// there and the other does not, as after the import of a raster of points that has only its north
// and west edge, the other gets it. Looks at `cells` and all that touch them; both tiles must have
// the same spacing. Returns the cells completed. An edge that cannot be written stays unknown.
std::vector<terrain::TileCell> close_seams(const std::filesystem::path& folder,
                                           const std::vector<terrain::TileCell>& cells);

}  // namespace mastwise::platform
