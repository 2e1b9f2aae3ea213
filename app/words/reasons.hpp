#pragma once

#include "core/propagation/itm/itm.hpp"
#include "core/reception/reason.hpp"

#include <string>

// Why a station has the chance it has.
namespace mastwise::words {

// "ridge 7.0 mi away, 210 ft above the line: -18 dB"; "clear line ..." for what costs nothing.
std::string reason(const reception::Reason& reason, bool miles);
// "ridge 11.3 km away, 64 m above the line"; "curve of the earth ...".
std::string obstacle(const reception::Obstacle& obstacle, bool miles);

// What of the terrain model is near its limit: "the path is longer than 1,000 km".
std::string model_limit(itm::Warning warning);
// Which of its formulas was used: "bent around the terrain by diffraction".
std::string model_range(itm::Range range);

}  // namespace mastwise::words
