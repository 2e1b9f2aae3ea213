#pragma once

#include "core/landcover/cover_tile.hpp"
#include "core/terrain/globe_point.hpp"

#include <algorithm>

namespace mastwise::landcover {

// An area of 3 arc seconds, counted from the south pole and from 180 W plus whole turns.
struct GlobeArea {
  int north = 0;
  int east = 0;

  static GlobeArea of(terrain::GlobePoint point) {
    return {.north = std::min(static_cast<int>(point.north_deg * CoverTile::kSide),
                              180 * CoverTile::kSide - 1),
            .east = static_cast<int>(point.east_deg * CoverTile::kSide)};
  }
  terrain::GlobeCell cell() const {
    return {.north = north / CoverTile::kSide, .east = east / CoverTile::kSide};
  }
};

}  // namespace mastwise::landcover
