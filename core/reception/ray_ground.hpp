#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/terrain/profile.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstddef>
#include <optional>

namespace mastwise::reception {

// A point of a ray from a transmitter. Points are 90 m apart, for all tiles. Four sets of them,
// offset by a quarter of that, ensure that one is within 11.3 m of any distance.
struct RayPoint {
  static constexpr std::size_t kSets = 4;
  // Slightly less than cut_profile's, so that rounding never adds an interval.
  static constexpr double kSpacing_m = 90.0 * (1.0 - 1e-6);

  std::size_t set = 0;
  std::size_t point = 0;  // from the transmitter's foot, point 0

  static RayPoint nearest(double distance_m);
};

// The ground along one ray, cut once for all cells next to it. A cell's ground differs from a
// separate profile only in where it is read: off the straight path by as much as the ray misses the
// cell, and along it by at most 34 m at the transmitter and 11.3 m at the cell. The ground at both
// ends is that of the ends.
class RayGround {
 public:
  // Cuts points 0 to `last_point` of one set. `foot_m` is the ground at the transmitter. Allocates
  // nothing after the longest ray.
  void cut(const terrain::TileSource& tiles, Position transmitter, double foot_m,
           Bearing<True> bearing, std::size_t set, std::size_t last_point);

  // The ray as it was cut, but for the heights that `to` replaces.
  const terrain::PathProfile& profile() const { return profile_; }

  // The ground to a cell at that distance, with the given ground at the cell; `point` is the
  // nearest one, at most the last. Valid until the next call. std::nullopt if any ground before it
  // is unknown.
  std::optional<itm::TerrainProfile> to(std::size_t point, double distance_m, double ground_m);

 private:
  terrain::PathProfile profile_;
  std::size_t known_points_ = 0;    // from the transmitter to the first unknown one
  std::size_t replaced_point_ = 0;  // now has a cell's ground
  double replaced_height_m_ = 0.0;  // its original height
};

}  // namespace mastwise::reception
