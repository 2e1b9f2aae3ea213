#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"
#include "platform/tile_index.hpp"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <span>
#include <vector>

namespace mastwise::platform {

// Receives the progress of an import, within [0, 1]; returns true to continue.
using ImportProgress = std::function<bool(double done)>;

// Writes the tiles of an import into a folder, all or none: first into a hidden folder beside them,
// which is removed at the end in any case. One writer for a folder at a time.
class TileWriter {
 public:
  TileWriter(std::filesystem::path folder, const TileNaming& naming);
  ~TileWriter();
  TileWriter(const TileWriter&) = delete;
  TileWriter& operator=(const TileWriter&) = delete;

  // Creates the folders. Errors: no permission.
  Result<Done> start();
  // Writes a tile under another name; returns once it is on the disk. Errors: a full disk, a file
  // in the place of the tile that is not one.
  Result<Done> write(terrain::TileCell cell, std::span<const std::byte> bytes);
  // Gives all written tiles their names, and returns their cells in that order.
  Result<std::vector<terrain::TileCell>> place();

 private:
  struct Finished {
    terrain::TileCell cell;
    std::filesystem::path written;
    std::filesystem::path final_name;
  };
  void clear();
  Result<std::filesystem::path> final_name(terrain::TileCell cell) const;

  const std::filesystem::path folder_;
  const std::filesystem::path workbench_;
  const TileNaming naming_;
  const TileIndex index_;
  std::vector<Finished> finished_;
};

// A cell whose west_deg may exceed 179, as of a raster across the antimeridian, on the globe.
terrain::TileCell folded(terrain::TileCell cell);

}  // namespace mastwise::platform
