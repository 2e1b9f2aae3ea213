#pragma once

#include "core/map/borders.hpp"
#include "core/terrain/tile_source.hpp"

namespace mastwise::reception {

// The data about the land that paths cross; a view, whose parts must outlive it.
struct Land {
  // Heights alone are enough.
  Land(const terrain::TileSource& heights, const map::Borders* borders = nullptr)
      : tiles(heights), coasts(borders) {}

  const terrain::TileSource& tiles;
  const map::Borders* coasts;  // null: every path counts as inland
};

}  // namespace mastwise::reception
