#pragma once

#include "core/result.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <vector>

namespace mastwise::platform {

// A folder or a card full of SRTM tiles, with its folders within: N44W072.hgt, N44W072.hgt.zip,
// n44w072.SRTMGL1.hgt and the like, at 3 or 1 arc second. Only names and sizes are read to index
// it; a tile is mapped, or unpacked, once, when it is first asked for. Where a cell is there more
// than once, a plain file goes before a zipped one, then the finer before the coarser, then the
// earlier path. All functions may be called from any thread.
class TileFolder : public terrain::TileSource {
 public:
  // Zipped tiles are kept unpacked up to this much memory, the longest unused being dropped first
  // (a tile of 3 arc seconds takes 2.9 MB, one of 1 arc second 25.9 MB).
  static constexpr std::size_t kUnpackedLimit_bytes = 192u << 20;

  // A folder that does not exist, yet, is an empty one.
  explicit TileFolder(std::filesystem::path folder,
                      std::size_t unpacked_limit_bytes = kUnpackedLimit_bytes);
  ~TileFolder() override;

  // Null for a cell without tile, and for a damaged one, which problems() then tells.
  std::shared_ptr<const terrain::Tile> tile(terrain::TileCell cell) const override;

  // Looks whether a folder has changed since it was indexed, which costs one query a folder, and
  // if so indexes again. True if it did. Tiles in use stay readable.
  bool refresh();

  // The cells that have a file, in order.
  std::vector<terrain::TileCell> cells() const;

  // Files named like tiles that cannot be used, and why: wrong sizes at once, damaged ones as soon
  // as they are asked for, those whose card was pulled out once heights are missed.
  std::vector<Error> problems() const;

 private:
  class State;
  std::unique_ptr<State> state_;
};

}  // namespace mastwise::platform
