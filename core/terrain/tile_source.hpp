#pragma once

#include "core/geo/position.hpp"
#include "core/terrain/tile.hpp"

#include <map>
#include <memory>
#include <optional>

namespace mastwise::terrain {

// Where tiles come from. Any number of threads may ask at once; a tile stays readable for as long
// as its pointer is held.
class TileSource {
 public:
  virtual ~TileSource() = default;
  // The tile of a cell, or null where there is none that can be read.
  virtual std::shared_ptr<const Tile> tile(TileCell cell) const = 0;
};

// Tiles in memory. Fill it before threads read it.
class TileSet : public TileSource {
 public:
  // Takes the place of an earlier tile of the same cell.
  void add(std::shared_ptr<const Tile> tile) { tiles_.insert_or_assign(tile->cell(), tile); }
  std::shared_ptr<const Tile> tile(TileCell cell) const override {
    const auto found = tiles_.find(cell);
    return found == tiles_.end() ? nullptr : found->second;
  }

 private:
  std::map<TileCell, std::shared_ptr<const Tile>> tiles_;
};

// Height of the ground in meters above the geoid by bilinear interpolation. Nothing where there is
// no tile or a void: never sea level. A position on a degree line is sought in every tile that has
// that line.
std::optional<double> ground_height_m(const TileSource& tiles, Position position);

}  // namespace mastwise::terrain
