#pragma once

#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <gdal_priv.h>
#include <gdalwarper.h>
#include <ogr_spatialref.h>

// What the readers of elevation and land cover rasters share. Only for sources of platform.
namespace mastwise::platform {

// Keeps GDAL from printing, and stores its first message about a failure.
class QuietGdal {
 public:
  QuietGdal();
  ~QuietGdal() { CPLPopErrorHandler(); }
  QuietGdal(const QuietGdal&) = delete;
  QuietGdal& operator=(const QuietGdal&) = delete;

  std::string failure() const { return failure_.empty() ? "reason unknown" : failure_; }

 private:
  static void CPL_STDCALL keep(CPLErr level, CPLErrorNum, const char* message);
  std::string failure_;
};

struct CloseDataset {
  void operator()(GDALDataset* dataset) const { GDALClose(dataset); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;

// A kind of raster, for its errors and its reach.
struct RasterKind {
  const char* name;    // "elevation raster"
  const char* remedy;  // what to choose instead
  double
      inset_pixels;  // how far inside its outer edge values are known: 0.5 for points, 0 for areas
};

// Samples at the middles of square pixels in degrees; the north-west corner is an outer edge.
struct DegreeGrid {
  double west_deg = 0.0;
  double north_deg = 0.0;
  double spacing_deg = 0.0;
  int columns = 0;
  int rows = 0;
};

// A raster with one band and a known place on earth, in any coordinate system. One thread at a
// time.
class GdalRaster {
 public:
  // Errors: not a raster, damaged, several bands, unknown place or coordinate system.
  static Result<GdalRaster> open(const std::filesystem::path& path, const RasterKind& kind);

  GDALDataset& dataset() const { return *dataset_; }
  GDALRasterBand& band() const { return *dataset_->GetRasterBand(1); }
  Error unusable(const std::string& why) const;

  // The cells that it covers by more than the edge that neighbors share. west_deg may exceed 179
  // for a raster across the antimeridian.
  const std::vector<terrain::TileCell>& cells() const { return cells_; }
  // The larger spacing of neighboring pixels in its middle, in degrees of latitude.
  double spacing_deg() const { return spacing_deg_; }

  struct Reading {
    GDALResampleAlg resampling = GRA_NearestNeighbour;
    GDALDataType type = GDT_Byte;  // of the values
    std::optional<double> void_value = {};
    double not_reached = 0.0;             // for samples that the raster does not cover, and voids
    GDALProgressFunc progress = nullptr;  // stops the reading if it returns FALSE
    void* progress_argument = nullptr;
  };
  // Reads the raster at the samples of a grid, rows from north to south, into `values`. Errors:
  // damaged data, or stopped.
  Result<Done> read(const DegreeGrid& grid, const Reading& reading, void* values) const;

 private:
  GdalRaster(std::filesystem::path path, const RasterKind& kind)
      : path_(std::move(path)), kind_(kind) {}

  struct Extent;
  Result<Done> locate(const QuietGdal& gdal);
  std::optional<Extent> extent(OGRCoordinateTransformation& to_degrees) const;
  std::optional<double> spacing_deg(OGRCoordinateTransformation& to_degrees) const;
  double x_of(double column, double row) const {
    return place_[0] + column * place_[1] + row * place_[2];
  }
  double y_of(double column, double row) const {
    return place_[3] + column * place_[4] + row * place_[5];
  }

  std::filesystem::path path_;
  RasterKind kind_;
  Dataset dataset_;
  std::array<double, 6> place_{};  // GDAL's affine transform, pixels to coordinates
  std::vector<terrain::TileCell> cells_;
  double spacing_deg_ = 0.0;
};

}  // namespace mastwise::platform
