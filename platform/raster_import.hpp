#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"
#include "platform/tile_writer.hpp"

#include <cstddef>
#include <filesystem>
#include <vector>

namespace mastwise::platform {

// The result of an import.
struct RasterImport {
  bool stopped = false;                    // by the caller: then nothing changed
  std::vector<terrain::TileCell> written;  // tiles created or completed
  std::size_t new_heights = 0;             // samples that were void before
};

// Turns an elevation raster that GDAL can read (GeoTIFF, DTED and others, in any coordinate system)
// into tiles in `folder`, which is created if missing.
// - Cells without a tile get one of 1 arc second if the raster's spacing is 2 arc seconds or finer,
// else of 3 arc seconds. Cells with a tile (also zipped or in a subfolder, as TileFolder finds it)
// keep its spacing and all its heights: only its voids are filled. To get the new heights instead,
// remove the old tile first.
// - Heights are interpolated bilinearly, averaged if the raster is finer, and rounded to whole
// meters; feet are converted. Samples outside the raster, its voids, and impossible heights (below
// -12,000 m or above 9,000 m) stay voids. Cells without any height get no tile.
// - Edges that only one of two neighboring tiles knows are completed; see close_seams().
// - A raster that cannot be read to its end, an error or a stop changes nothing: all tiles are
// written under other names first and renamed at the end.
// Errors: not a raster, several bands, unknown coordinate system, a unit that is neither meters nor
// feet, damaged data, a full disk. One import into a folder at a time.
Result<RasterImport> import_raster(const std::filesystem::path& raster,
                                   const std::filesystem::path& folder,
                                   const ImportProgress& progress);

}  // namespace mastwise::platform
