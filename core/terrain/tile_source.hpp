#pragma once

#include "core/geo/position.hpp"
#include "core/terrain/tile.hpp"

#include <map>
#include <memory>
#include <optional>

namespace mastwise::terrain {

// A source of tiles. Any number of threads may call it at once; a tile stays readable as long as
// its pointer is kept.
class TileSource {
 public:
  virtual ~TileSource() = default;
  // The tile of a cell, or null if there is none that can be read.
  virtual std::shared_ptr<const Tile> tile(TileCell cell) const = 0;
};

// Tiles in memory. Fill it before threads read it.
class TileSet : public TileSource {
 public:
  // Replaces an earlier tile of the same cell.
  void add(std::shared_ptr<const Tile> tile) { tiles_.insert_or_assign(tile->cell(), tile); }
  std::shared_ptr<const Tile> tile(TileCell cell) const override {
    const auto found = tiles_.find(cell);
    return found == tiles_.end() ? nullptr : found->second;
  }

 private:
  std::map<TileCell, std::shared_ptr<const Tile>> tiles_;
};

// Height of the ground in meters above the geoid by bilinear interpolation; std::nullopt without a
// tile or at a void, never sea level. For a position on a degree line, every tile that has that
// line is tried.
std::optional<double> ground_height_m(const TileSource& tiles, Position position);

}  // namespace mastwise::terrain
