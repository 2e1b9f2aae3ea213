#pragma once

#include "core/landcover/cover_source.hpp"
#include "core/map/borders.hpp"
#include "core/terrain/tile_source.hpp"

namespace mastwise::reception {

// The data about the land that paths cross; a view, whose parts must outlive it.
struct Land {
  // Heights alone are enough.
  Land(const terrain::TileSource& heights, const map::Borders* borders = nullptr,
       const landcover::CoverSource* classes = nullptr)
      : tiles(heights), coasts(borders), cover(classes) {}

  const terrain::TileSource& tiles;
  const map::Borders* coasts;           // null: every path counts as inland
  const landcover::CoverSource* cover;  // null: unknown everywhere
};

}  // namespace mastwise::reception
