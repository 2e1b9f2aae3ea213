#pragma once

#include "core/terrain/globe_point.hpp"

#include <array>
#include <cstddef>

namespace mastwise::terrain {

// A segment of a geodesic as cubics of the fraction t in [0, 1] between two of its points.
struct TrackSegment {
  std::size_t first_point = 0;  // of the path's points, at t = 0
  std::size_t intervals = 0;    // from there to t = 1
  std::array<double, 4> north_deg{};
  std::array<double, 4> east_deg{};

  GlobePoint at(double t) const {
    return {.north_deg = ((north_deg[3] * t + north_deg[2]) * t + north_deg[1]) * t + north_deg[0],
            .east_deg = ((east_deg[3] * t + east_deg[2]) * t + east_deg[1]) * t + east_deg[0]};
  }
};

}  // namespace mastwise::terrain
