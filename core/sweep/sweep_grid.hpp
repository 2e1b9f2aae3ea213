#pragma once

#include "core/sweep/sweep_lanes.hpp"

#include <cstddef>

namespace mastwise::aim {

// The grid of peaks is a comb: every third degree of the circle, shifted by a fraction of the step.
// A response table has rows of every third degree, twice around the circle, so that the responses
// for neighboring peaks are adjacent.
inline constexpr std::size_t kTeeth = 3;
inline constexpr double kCombStepDeg = 3.0;
inline constexpr std::size_t kCombs = 120;
inline constexpr std::size_t kRow = 2 * kCombs + 2 * kLanes;

inline constexpr std::size_t table_entry(std::size_t degree) {
  return (degree % kTeeth) * kRow + degree / kTeeth;
}

}  // namespace mastwise::aim
