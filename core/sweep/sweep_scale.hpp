#pragma once

#include "core/sweep/sweep.hpp"

#include <limits>

namespace mastwise::aim {

// The fit's parameters of a scale. Common practice, no source: from memory of how receivers map the
// carrier-to-noise ratio; wide on purpose, since the readings soon determine it.
struct ScaleFigures {
  double units_per_db;      // typical
  double slope_sigma;       // relative sigma of the true slope
  double peak_level;        // in units, typical; NaN: the highest reading
  double peak_level_sigma;  // in units
  double noise;             // one sigma of a reading, in units, with the rounding of the meter
  double rounding;          // one sigma of the meter's steps
  double least = -std::numeric_limits<double>::infinity();  // the ends of the scale
  double most = std::numeric_limits<double>::infinity();
};

ScaleFigures scale_figures(Scale scale);

// An earlier reading is of a receiver that had not settled [common practice, no source].
inline constexpr milliseconds kLeastWaiting{3000};
inline constexpr double kHurriedWeight = 0.25;

}  // namespace mastwise::aim
