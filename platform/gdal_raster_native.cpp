#include "platform/gdal_raster.hpp"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <numbers>
#include <utility>

#include <fmt/format.h>
#include <gdal_alg.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::TileCell;

// GDAL's drivers whose files hold the heights themselves. Others only name where the heights are,
// which may be a server: a file from a stick must not open a connection.
constexpr std::array<const char*, 17> kLocalFormats{
    "GTiff", "DTED", "SRTMHGT", "HFA",  "AAIGrid", "AIG",    "EHdr", "ENVI", "USGSDEM",
    "BT",    "SAGA", "GSAG",    "GSBG", "GS7BG",   "netCDF", "XYZ",  nullptr};

struct DestroyTransformation {
  void operator()(OGRCoordinateTransformation* transformation) const {
    OGRCoordinateTransformation::DestroyCT(transformation);
  }
};
using Transformation = std::unique_ptr<OGRCoordinateTransformation, DestroyTransformation>;

struct DestroyWarpOptions {
  void operator()(GDALWarpOptions* options) const {
    if (options->pTransformerArg != nullptr) GDALDestroyApproxTransformer(options->pTransformerArg);
    GDALDestroyWarpOptions(options);
  }
};
using WarpOptions = std::unique_ptr<GDALWarpOptions, DestroyWarpOptions>;

OGRSpatialReference wgs84() {
  OGRSpatialReference reference;
  reference.SetWellKnownGeogCS("WGS84");
  reference.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  return reference;
}

std::vector<TileCell> cells_of(double west_deg, double south_deg, double east_deg,
                               double north_deg) {
  constexpr double kEdge_deg = 0.5 / 3600.0;
  const auto first = [](double degrees) {
    return static_cast<int>(std::floor(degrees + kEdge_deg));
  };
  const auto behind = [](double degrees) {
    return static_cast<int>(std::ceil(degrees - kEdge_deg));
  };
  std::vector<TileCell> cells;
  for (int south = first(south_deg); south < behind(north_deg); ++south) {
    for (int west = first(west_deg); west < behind(east_deg); ++west) {
      cells.push_back({.south_deg = south, .west_deg = west});
    }
  }
  return cells;
}

}  // namespace

// East may exceed 180.
struct GdalRaster::Extent {
  double west_deg = 0.0;
  double south_deg = 0.0;
  double east_deg = 0.0;
  double north_deg = 0.0;
};

QuietGdal::QuietGdal() {
  static std::once_flag registered;
  std::call_once(registered, GDALAllRegister);
  CPLPushErrorHandlerEx(keep, this);
}

void CPL_STDCALL QuietGdal::keep(CPLErr level, CPLErrorNum, const char* message) {
  auto* const self = static_cast<QuietGdal*>(CPLGetErrorHandlerUserData());
  if (level >= CE_Failure && self->failure_.empty()) self->failure_ = message;
}

Error GdalRaster::unusable(const std::string& why) const {
  return {.what = fmt::format("cannot use the {}: {}", kind_.name, why),
          .where = path_.string(),
          .remedy = kind_.remedy};
}

Result<GdalRaster> GdalRaster::open(const fs::path& path, const RasterKind& kind) {
  const QuietGdal gdal;
  GdalRaster raster(path, kind);
  raster.dataset_.reset(GDALDataset::Open(
      path.string().c_str(), GDAL_OF_RASTER | GDAL_OF_VERBOSE_ERROR, kLocalFormats.data()));
  if (!raster.dataset_) return raster.unusable(gdal.failure());
  const auto located = raster.locate(gdal);
  if (!located) return located.error();
  return raster;
}

Result<Done> GdalRaster::locate(const QuietGdal& gdal) {
  if (dataset_->GetRasterCount() != 1) {
    return unusable(
        fmt::format("it has {} bands, but such a raster has one", dataset_->GetRasterCount()));
  }
  if (dataset_->GetSpatialRef() == nullptr || dataset_->GetGeoTransform(place_.data()) != CE_None) {
    return unusable("it does not say where on earth it is");
  }
  OGRSpatialReference reference = *dataset_->GetSpatialRef();
  reference.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  const OGRSpatialReference degrees = wgs84();
  const Transformation to_degrees(OGRCreateCoordinateTransformation(&reference, &degrees));
  if (!to_degrees) return unusable(gdal.failure());
  const auto reached = extent(*to_degrees);
  const auto spacing = spacing_deg(*to_degrees);
  if (!reached || !spacing) return unusable("cannot find its place on earth");
  cells_ = cells_of(reached->west_deg, reached->south_deg, reached->east_deg, reached->north_deg);
  spacing_deg_ = *spacing;
  return Done{};
}

std::optional<GdalRaster::Extent> GdalRaster::extent(
    OGRCoordinateTransformation& to_degrees) const {
  const double left = kind_.inset_pixels, top = kind_.inset_pixels;
  const double right = dataset_->GetRasterXSize() - kind_.inset_pixels;
  const double bottom = dataset_->GetRasterYSize() - kind_.inset_pixels;
  const auto x =
      std::minmax({x_of(left, top), x_of(right, top), x_of(left, bottom), x_of(right, bottom)});
  const auto y =
      std::minmax({y_of(left, top), y_of(right, top), y_of(left, bottom), y_of(right, bottom)});
  Extent extent;
  constexpr int kPointsOnAnEdge = 21;
  const int placed = to_degrees.TransformBounds(
      x.first, y.first, x.second, y.second, &extent.west_deg, &extent.south_deg, &extent.east_deg,
      &extent.north_deg, kPointsOnAnEdge);
  const bool on_globe = std::fabs(extent.west_deg) <= 540.0 &&
                        std::fabs(extent.east_deg) <= 540.0 && extent.south_deg >= -90.0 &&
                        extent.north_deg <= 90.0;
  if (placed == 0 || !on_globe) return std::nullopt;
  if (extent.east_deg < extent.west_deg) extent.east_deg += 360.0;  // over the antimeridian
  return extent;
}

std::optional<double> GdalRaster::spacing_deg(OGRCoordinateTransformation& to_degrees) const {
  const double column = dataset_->GetRasterXSize() / 2.0;
  const double row = dataset_->GetRasterYSize() / 2.0;
  std::array<double, 3> east = {x_of(column, row), x_of(column + 1, row), x_of(column, row + 1)};
  std::array<double, 3> north = {y_of(column, row), y_of(column + 1, row), y_of(column, row + 1)};
  if (to_degrees.Transform(3, east.data(), north.data()) == 0) return std::nullopt;
  const double parallel = std::cos(north[0] * std::numbers::pi / 180.0);
  const double across = std::hypot((east[1] - east[0]) * parallel, north[1] - north[0]);
  const double down = std::hypot((east[2] - east[0]) * parallel, north[2] - north[0]);
  return std::max(across, down);
}

Result<Done> GdalRaster::read(const DegreeGrid& grid, const Reading& reading, void* values) const {
  const QuietGdal gdal;
  GDALDriver* const memory = GetGDALDriverManager()->GetDriverByName("MEM");
  const Dataset target(memory->Create("", grid.columns, grid.rows, 1, reading.type, nullptr));
  if (!target) return unusable(gdal.failure());
  std::array<double, 6> place = {grid.west_deg, grid.spacing_deg, 0.0, grid.north_deg,
                                 0.0,           -grid.spacing_deg};
  target->SetGeoTransform(place.data());
  const OGRSpatialReference degrees = wgs84();
  target->SetSpatialRef(&degrees);

  const WarpOptions options(GDALCreateWarpOptions());
  options->hSrcDS = dataset_.get();
  options->hDstDS = target.get();
  options->eResampleAlg = reading.resampling;
  GDALWarpInitDefaultBandMapping(options.get(), 1);
  if (reading.void_value) GDALWarpInitSrcNoDataReal(options.get(), *reading.void_value);
  if (reading.resampling == GRA_NearestNeighbour) {
    // GDAL changes a value that equals the target's void value: codes must stay as they are.
    const std::string start = fmt::format("{}", reading.not_reached);
    options->papszWarpOptions =
        CSLSetNameValue(options->papszWarpOptions, "INIT_DEST", start.c_str());
  } else {
    GDALWarpInitDstNoDataReal(options.get(), reading.not_reached);
    options->papszWarpOptions = CSLSetNameValue(options->papszWarpOptions, "INIT_DEST", "NO_DATA");
  }
  void* const exact = GDALCreateGenImgProjTransformer2(options->hSrcDS, options->hDstDS, nullptr);
  if (exact == nullptr) return unusable(gdal.failure());
  constexpr double kLargestError_pixels = 0.01;
  options->pTransformerArg =
      GDALCreateApproxTransformer(GDALGenImgProjTransform, exact, kLargestError_pixels);
  GDALApproxTransformerOwnsSubtransformer(options->pTransformerArg, TRUE);
  options->pfnTransformer = GDALApproxTransform;
  if (reading.progress != nullptr) {
    options->pfnProgress = reading.progress;
    options->pProgressArg = reading.progress_argument;
  }
  GDALWarpOperation warp;
  const bool done = warp.Initialize(options.get()) == CE_None &&
                    warp.ChunkAndWarpImage(0, 0, grid.columns, grid.rows) == CE_None &&
                    target->GetRasterBand(1)->RasterIO(GF_Read, 0, 0, grid.columns, grid.rows,
                                                       values, grid.columns, grid.rows,
                                                       reading.type, 0, 0, nullptr) == CE_None;
  if (!done) return unusable(gdal.failure());
  return Done{};
}

}  // namespace mastwise::platform
