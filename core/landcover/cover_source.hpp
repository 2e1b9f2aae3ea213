#pragma once

#include "core/geo/position.hpp"
#include "core/landcover/cover_tile.hpp"

#include <map>
#include <memory>

namespace mastwise::landcover {

// A source of land cover tiles, beside terrain::TileSource. Any number of threads may call it at
// once; a tile stays readable as long as its pointer is kept.
class CoverSource {
 public:
  virtual ~CoverSource() = default;
  // The tile of a cell, or null if there is none that can be read.
  virtual std::shared_ptr<const CoverTile> tile(terrain::TileCell cell) const = 0;
};

// Tiles in memory. Fill it before threads read it.
class CoverSet : public CoverSource {
 public:
  // Replaces an earlier tile of the same cell.
  void add(std::shared_ptr<const CoverTile> tile) { tiles_.insert_or_assign(tile->cell(), tile); }
  std::shared_ptr<const CoverTile> tile(terrain::TileCell cell) const override {
    const auto found = tiles_.find(cell);
    return found == tiles_.end() ? nullptr : found->second;
  }

 private:
  std::map<terrain::TileCell, std::shared_ptr<const CoverTile>> tiles_;
};

// The class at a position; `unknown` without a tile. A position on the edge of an area belongs to
// the area north and east of it.
CoverClass class_at(const CoverSource& cover, Position position);

}  // namespace mastwise::landcover
