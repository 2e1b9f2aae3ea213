#pragma once

#include "core/terrain/tile_source.hpp"

#include <algorithm>
#include <optional>

namespace mastwise::terrain {

// A place in coordinates that are always positive, so that truncation finds its cell: degrees north
// of the south pole, within [0, 180], and degrees east of 180 W plus whole turns, at least 0.
struct GlobePoint {
  double north_deg = 0.0;
  double east_deg = 0.0;

  static GlobePoint of_deg(double latitude_deg, double unrolled_longitude_deg) {
    return {.north_deg = latitude_deg + 90.0, .east_deg = unrolled_longitude_deg + 180.0 + 360.0};
  }
};

// A cell in the same coordinates, with its longitude not yet folded.
struct GlobeCell {
  int north = 0;
  int east = 0;
  bool operator==(const GlobeCell&) const = default;

  static GlobeCell of(GlobePoint point) {
    return {.north = std::min(static_cast<int>(point.north_deg), 179),
            .east = static_cast<int>(point.east_deg)};
  }
  TileCell tile_cell() const { return {.south_deg = north - 90, .west_deg = east % 360 - 180}; }
};

// Height from the tile of that cell, for a point within it or on its edge; NaN at voids.
inline double height_in_m(const Tile& tile, GlobeCell cell, GlobePoint point) {
  const double intervals = tile.side() - 1;
  return tile.height_m((point.east_deg - cell.east) * intervals,
                       (cell.north + 1 - point.north_deg) * intervals);
}

// As for a position; see tile_source.hpp.
std::optional<double> ground_height_m(const TileSource& tiles, GlobePoint point);

}  // namespace mastwise::terrain
