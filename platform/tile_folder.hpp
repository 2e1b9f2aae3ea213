#pragma once

#include "core/result.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstddef>
#include <filesystem>
#include <memory>
#include <vector>

namespace mastwise::platform {

// A folder or a card of SRTM tiles, with its subfolders: N44W072.hgt, N44W072.hgt.zip,
// n44w072.SRTMGL1.hgt and the like, at 3 or 1 arc second. Indexing reads only names and sizes; a
// tile is mapped, or unpacked, once, on first request. If a cell has several files, a plain one has
// priority over a zipped one, then the finer over the coarser, then the earlier path. Any thread
// may call any function.
class TileFolder : public terrain::TileSource {
 public:
  // Zipped tiles stay unpacked up to this much memory; the least recently used is dropped first (a
  // tile of 3 arc seconds takes 2.9 MB, one of 1 arc second 25.9 MB).
  static constexpr std::size_t kUnpackedLimit_bytes = 192u << 20;

  // A folder that does not exist yet counts as empty.
  explicit TileFolder(std::filesystem::path folder,
                      std::size_t unpacked_limit_bytes = kUnpackedLimit_bytes);
  ~TileFolder() override;

  // Null for a cell without a tile, and for a damaged one, which problems() then lists.
  std::shared_ptr<const terrain::Tile> tile(terrain::TileCell cell) const override;

  // Checks whether a folder has changed since it was indexed, at the cost of one query per folder
  // and per tile in use, and if so indexes again. True if it did, or if a tile was cut short. Tiles
  // in use stay readable.
  bool refresh();

  // Whether a tile in use has been cut short; true once for each. Before that the system shows
  // zeros up to the end of its last page, so heights read since the last call may be wrong.
  bool find_cut() const;

  // The cells that have a file, in order.
  std::vector<terrain::TileCell> cells() const;

  // Files named like tiles that cannot be used, and why: wrong sizes at once, damaged ones after
  // the first request, those whose card was pulled out once heights are missing.
  std::vector<Error> problems() const;

 private:
  class State;
  std::unique_ptr<State> state_;
};

}  // namespace mastwise::platform
