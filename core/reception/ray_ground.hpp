#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/terrain/profile.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstddef>
#include <optional>

namespace mastwise::reception {

// A point of a ray from a transmitter: points lie 90 m apart, whatever the tiles, and there are
// four sets of them, a quarter of that apart, so that one lies within 11.3 m of any distance.
struct RayPoint {
  static constexpr std::size_t kSets = 4;
  // A hair less than cut_profile's own, so that rounding makes no interval more.
  static constexpr double kSpacing_m = 90.0 * (1.0 - 1e-6);

  std::size_t set = 0;
  std::size_t point = 0;  // from the transmitter's foot, point 0

  static RayPoint nearest(double distance_m);
};

// The ground along one ray, cut once for all cells beside it. What a cell gets differs from a
// profile of its own only in where the ground is read: beside the straight way by as much as the
// ray misses the cell, and along it by at most 34 m at the transmitter and 11.3 m at the cell. The
// ground at both ends is that of the ends.
class RayGround {
 public:
  // Cuts points 0 to `last_point` of one set. `foot_m` is the ground at the transmitter. Allocates
  // nothing once it held the longest ray.
  void cut(const terrain::TileSource& tiles, Position transmitter, double foot_m,
           Bearing<True> bearing, std::size_t set, std::size_t last_point);

  // The ground to a cell at that distance, whose own ground is given; `point` is the nearest one,
  // at most the last. Good until the next call. Nothing where any ground before it is not known.
  std::optional<itm::TerrainProfile> to(std::size_t point, double distance_m, double ground_m);

 private:
  terrain::PathProfile profile_;
  std::size_t known_points_ = 0;    // from the transmitter to the first that is not known
  std::size_t replaced_point_ = 0;  // holds a cell's ground
  double replaced_height_m_ = 0.0;  // and held this
};

}  // namespace mastwise::reception
