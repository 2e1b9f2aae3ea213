#pragma once

#include "core/landcover/class_table.hpp"
#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <array>
#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

namespace mastwise::platform {

// A raster of land cover codes that GDAL can read (GeoTIFF, Imagine and others, in any coordinate
// system), as classes of cover tiles. One thread at a time.
class CoverRaster {
 public:
  // Errors: not a raster, damaged, several bands, values larger than a byte, unknown coordinate
  // system, pixels larger than 12 arc seconds (370 m).
  static Result<CoverRaster> open(const std::filesystem::path& path);
  CoverRaster(CoverRaster&&) noexcept;
  ~CoverRaster();

  // Its name, palette, and the codes in 64 windows spread over it. Errors: damaged data.
  Result<landcover::RasterTraits> traits() const;

  // As ElevationRaster::cells().
  const std::vector<terrain::TileCell>& cells() const;

  // Receives the progress of a reading, within [0, 1]; returns true to continue.
  using Progress = std::function<bool(double done)>;

  // The classes of one of cells(), by CoverTile::place_of(): for each area of 3 arc seconds the
  // commonest (landcover::commonest) of the pixels at up to 10 by 10 places spread evenly over it,
  // about as far apart as the raster's pixels; a raster of 10 m has one place in each pixel. Marks
  // codes that the table does not list in `unlisted`. Memory is bounded by some 20 MB for any
  // raster. Empty if `progress` stopped it. Errors: damaged data.
  Result<std::vector<landcover::CoverClass>> classes(terrain::TileCell cell,
                                                     const landcover::ClassTable& table,
                                                     std::array<bool, 256>& unlisted,
                                                     const Progress& progress) const;

 private:
  class Source;
  explicit CoverRaster(std::unique_ptr<Source> source);
  std::unique_ptr<Source> source_;
};

}  // namespace mastwise::platform
