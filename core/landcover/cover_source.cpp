#include "core/landcover/cover_source.hpp"

#include "core/landcover/globe_area.hpp"

namespace mastwise::landcover {

CoverClass class_at(const CoverSource& cover, Position position) {
  const auto area =
      GlobeArea::of(terrain::GlobePoint::of_deg(position.latitude_deg(), position.longitude_deg()));
  const terrain::GlobeCell cell = area.cell();
  const auto tile = cover.tile(cell.tile_cell());
  if (!tile) return CoverClass::unknown;
  return tile->at(area.north - cell.north * CoverTile::kSide,
                  area.east - cell.east * CoverTile::kSide);
}

}  // namespace mastwise::landcover
