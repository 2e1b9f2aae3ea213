#pragma once

#include "core/sweep/sweep.hpp"

#include <limits>

namespace mastwise::aim {

// A scale as the fit sees it. Common practice, no source: from memory of how receivers map the
// carrier-to-noise ratio; wide on purpose, since the readings themselves soon say more.
struct ScaleFigures {
  double units_per_db;      // typical
  double slope_sigma;       // how far the true slope may be from that, as a part of it
  double peak_level;        // in units, typical; not a number: the highest reading
  double peak_level_sigma;  // in units
  double noise;             // one sigma of a reading, in units, with the rounding of the meter
  double rounding;          // one sigma of the meter's own steps
  double least = -std::numeric_limits<double>::infinity();  // the ends of the scale
  double most = std::numeric_limits<double>::infinity();
};

ScaleFigures scale_figures(Scale scale);

// A reading after less is one of a receiver that had not settled [common practice, no source].
inline constexpr milliseconds kLeastWaiting{3000};
inline constexpr double kHurriedWeight = 0.25;

}  // namespace mastwise::aim
