#include "core/terrain/tile_source.hpp"

#include "core/terrain/globe_point.hpp"

#include <cmath>

namespace mastwise::terrain {

std::optional<double> ground_height_m(const TileSource& tiles, Position position) {
  const auto point = GlobePoint::of_deg(position.latitude_deg(), position.longitude_deg());
  return ground_height_m(tiles, point);
}

std::optional<double> ground_height_m(const TileSource& tiles, GlobePoint point) {
  const GlobeCell home = GlobeCell::of(point);
  const bool on_parallel = point.north_deg == home.north && home.north > 0;
  const bool on_meridian = point.east_deg == home.east;
  for (int south = 0; south <= (on_parallel ? 1 : 0); ++south) {
    for (int west = 0; west <= (on_meridian ? 1 : 0); ++west) {
      const GlobeCell cell{.north = home.north - south, .east = home.east - west};
      const auto tile = tiles.tile(cell.tile_cell());
      if (!tile) continue;
      const double height_m = height_in_m(*tile, cell, point);
      if (!std::isnan(height_m)) return height_m;
    }
  }
  return std::nullopt;
}

}  // namespace mastwise::terrain
