#pragma once

#include "core/stations/station.hpp"

#include <array>

namespace mastwise::reception {

// Whether a station is directional and its pattern is not known.
inline bool has_unknown_pattern(const Station& station) {
  return station.directional.value_or(false) && !station.pattern;
}

// What a directional station whose pattern is unknown may lose toward a stop, against its strongest
// direction.
struct PatternLoss {
  double loss_db;
  double probability;
};

// Broad lobes with flanks and a few nulls of 10 to 20 dB [cp]: skewed, so that no margin but a
// large one is safe from a null.
inline constexpr std::array kUnknownPattern{PatternLoss{0.0, 0.3}, PatternLoss{2.0, 0.4},
                                            PatternLoss{6.0, 0.2}, PatternLoss{14.0, 0.1}};

// Their mean, and the standard deviation around it, dB.
inline constexpr double kUnknownPatternMean_db = 3.4;
inline constexpr double kUnknownPatternDeviation_db = 4.1;

}  // namespace mastwise::reception
