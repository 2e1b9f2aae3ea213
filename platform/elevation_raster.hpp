#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

namespace mastwise::platform {

// A file of heights that GDAL can read (GeoTIFF, DTED and others, in any coordinate system), as
// samples of SRTM tiles. One thread at a time.
class ElevationRaster {
 public:
  // Errors: not a raster, damaged, several bands, unknown coordinate system, a unit that is neither
  // meters nor feet.
  static Result<ElevationRaster> open(const std::filesystem::path& path);
  ElevationRaster(ElevationRaster&&) noexcept;
  ~ElevationRaster();

  // Samples on a side of the tiles that suit the raster's spacing: 3601 for 2 arc seconds or finer,
  // else 1201.
  int suitable_side() const;

  // The cells that it covers by more than the edge that neighbors share. west_deg may exceed 179
  // for a raster across the antimeridian.
  const std::vector<terrain::TileCell>& cells() const;

  // Receives the progress of a reading, within [0, 1]; returns true to continue.
  using Progress = std::function<bool(double done)>;

  // Heights in whole meters at the samples of one of cells(), rows from north to south, `side` 1201
  // or 3601. Bilinear interpolation, or averages if the raster is finer; known heights extend to
  // the outer edge of their pixels, so that neighboring rasters leave no seam. Voids and impossible
  // heights (below -12,000 m, above 9,000 m) are kVoidSample. Empty if `progress` stopped it.
  // Errors: damaged data.
  Result<std::vector<std::int16_t>> samples(terrain::TileCell cell, int side,
                                            const Progress& progress) const;

 private:
  class Source;
  explicit ElevationRaster(std::unique_ptr<Source> source);
  std::unique_ptr<Source> source_;
};

}  // namespace mastwise::platform
