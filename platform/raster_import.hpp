#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <vector>

namespace mastwise::platform {

// What an import did.
struct RasterImport {
  bool stopped = false;                    // by the caller: then nothing was changed
  std::vector<terrain::TileCell> written;  // tiles made or filled up
  std::size_t new_heights = 0;             // samples that had no height before
};

// Hears how far the import is, within [0, 1]; it goes on while true is returned.
using ImportProgress = std::function<bool(double done)>;

// Turns an elevation raster that GDAL can read (GeoTIFF, DTED and others, in any coordinate system)
// into tiles in `folder`, which is made if need be.
// - Cells without a tile get one of 1 arc second where the raster's own spacing is 2 arc seconds or
//   finer, else of 3 arc seconds. Cells with a tile (also zipped or in a folder within, as
//   TileFolder finds it) keep its spacing and all its heights: only its voids are filled. Who wants
//   the new heights instead removes the old tile first.
// - Heights are interpolated bilinearly, averaged where the raster is the finer one, rounded to
//   whole meters; feet are converted. What the raster does not cover, its own voids, and heights
//   that no ground has (below -12,000 m or above 9,000 m) stay voids. Cells without any height get
//   no tile.
// - A raster that cannot be read to its end, an error or a stop changes nothing: all tiles are
//   written under other names first and renamed at the end.
// Errors: no raster, or one of several bands, no known coordinate system, a unit that is
// neither meters nor feet, damaged data, a full disk. One import into a folder at a time.
Result<RasterImport> import_raster(const std::filesystem::path& raster,
                                   const std::filesystem::path& folder,
                                   const ImportProgress& progress);

}  // namespace mastwise::platform
