#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/terrain/globe_point.hpp"

#include <array>
#include <cstddef>

#include <GeographicLib/GeodesicLine.hpp>

namespace mastwise::terrain {

// A stretch of a geodesic as cubics of the fraction t in [0, 1] between two of its points.
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

// The WGS84 geodesic between two positions, cut into equal intervals. Solving the geodesic for each
// point costs some 0.3 us; instead it is solved each 50 km or less (closer near a pole, at every
// point if it may meet the pole) and the points between lie on cubics with the geodesic's own
// positions and directions at both ends (Hermite). They are within 0.01 m of the geodesic. A great
// circle through the same coordinates would depart from it by up to 18 m over 300 km.
// Source of the geodesic: GeographicLib, Karney 2013, doi 10.1007/s00190-012-0578-z.
class GeodesicTrack {
 public:
  GeodesicTrack(Position from, Position to);

  double distance_m() const { return line_.Distance(); }
  Bearing<True> bearing_at_start() const;
  // The direction from the far end back to the start.
  Bearing<True> bearing_back() const;

  // Cuts into so many intervals (at least 1), and goes back to the first segment.
  void cut(std::size_t intervals);
  // Puts the next segment into `segment`; false behind the last one.
  bool next(TrackSegment& segment);

 private:
  struct Node {
    GlobePoint point;
    double north_deg_per_m = 0.0;
    double east_deg_per_m = 0.0;
  };
  Node node_at(double distance_m) const;

  GeographicLib::GeodesicLine line_;
  double far_latitude_deg_;  // of the end that is closer to a pole, without sign
  std::size_t intervals_ = 1;
  std::size_t stride_ = 1;  // intervals in a segment
  std::size_t done_ = 0;    // intervals already handed out
  Node node_;               // at the end of what was handed out
};

}  // namespace mastwise::terrain
