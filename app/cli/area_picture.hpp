#pragma once

#include "core/reception/best_spots.hpp"
#include "core/result.hpp"

#include <string>
#include <vector>

namespace mastwise::cli {

// Draws the chances of an area into a PNG file, north up, at least 500 pixels wide: dark to light
// by chance, unknown cells as a fine checkerboard, the stop as a cross and the spots as squares.
Result<Done> write_area_picture(const std::string& path, const reception::AreaGrid& grid,
                                const reception::ChanceMap& chances,
                                const std::vector<reception::Spot>& spots);

}  // namespace mastwise::cli
