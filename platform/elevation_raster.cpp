#include "platform/elevation_raster.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <mutex>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>
#include <gdal_alg.h>
#include <gdal_priv.h>
#include <gdalwarper.h>
#include <ogr_spatialref.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::kVoidSample;
using terrain::Tile;
using terrain::TileCell;

// A value outside every raster, for samples that the raster does not cover.
constexpr float kNotReached = -1e30f;
constexpr double kLowestGround_m = -12'000.0;
constexpr double kHighestGround_m = 9'000.0;

// GDAL's drivers whose files hold the heights themselves. Others only name where the heights are,
// which may be a server: a file from a stick must not open a connection.
constexpr std::array<const char*, 17> kLocalFormats{
    "GTiff", "DTED", "SRTMHGT", "HFA",  "AAIGrid", "AIG",    "EHdr", "ENVI", "USGSDEM",
    "BT",    "SAGA", "GSAG",    "GSBG", "GS7BG",   "netCDF", "XYZ",  nullptr};

// Keeps GDAL from printing, and stores its first message about a failure.
class QuietGdal {
 public:
  QuietGdal() {
    static std::once_flag registered;
    std::call_once(registered, GDALAllRegister);
    CPLPushErrorHandlerEx(keep, this);
  }
  ~QuietGdal() { CPLPopErrorHandler(); }
  QuietGdal(const QuietGdal&) = delete;
  QuietGdal& operator=(const QuietGdal&) = delete;

  std::string failure() const { return failure_.empty() ? "reason unknown" : failure_; }

 private:
  static void CPL_STDCALL keep(CPLErr level, CPLErrorNum, const char* message) {
    auto* const self = static_cast<QuietGdal*>(CPLGetErrorHandlerUserData());
    if (level >= CE_Failure && self->failure_.empty()) self->failure_ = message;
  }
  std::string failure_;
};

struct CloseDataset {
  void operator()(GDALDataset* dataset) const { GDALClose(dataset); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;

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

// East may exceed 180.
struct Extent {
  double west_deg = 0.0;
  double south_deg = 0.0;
  double east_deg = 0.0;
  double north_deg = 0.0;
};

Error unusable(const fs::path& raster, const std::string& why) {
  return {.what = "cannot use the elevation raster: " + why,
          .where = raster.string(),
          .remedy = "choose an undamaged GeoTIFF, DTED or other raster of heights"};
}

std::optional<double> meters_per_unit(std::string unit) {
  std::transform(unit.begin(), unit.end(), unit.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter | 0x20) : letter;
  });
  constexpr double kFoot = 0.3048;
  constexpr double kSurveyFoot = 1200.0 / 3937.0;
  static const std::map<std::string, double> kUnits = {{"", 1.0},
                                                       {"m", 1.0},
                                                       {"metre", 1.0},
                                                       {"meter", 1.0},
                                                       {"metres", 1.0},
                                                       {"meters", 1.0},
                                                       {"ft", kFoot},
                                                       {"foot", kFoot},
                                                       {"feet", kFoot},
                                                       {"us-ft", kSurveyFoot},
                                                       {"ftus", kSurveyFoot},
                                                       {"us survey foot", kSurveyFoot}};
  const auto found = kUnits.find(unit);
  return found == kUnits.end() ? std::nullopt : std::optional(found->second);
}

OGRSpatialReference wgs84() {
  OGRSpatialReference reference;
  reference.SetWellKnownGeogCS("WGS84");
  reference.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  return reference;
}

std::vector<TileCell> cells_of(const Extent& extent) {
  constexpr double kEdge_deg = 0.5 / 3600.0;
  const auto first = [](double degrees) {
    return static_cast<int>(std::floor(degrees + kEdge_deg));
  };
  const auto behind = [](double degrees) {
    return static_cast<int>(std::ceil(degrees - kEdge_deg));
  };
  std::vector<TileCell> cells;
  for (int south = first(extent.south_deg); south < behind(extent.north_deg); ++south) {
    for (int west = first(extent.west_deg); west < behind(extent.east_deg); ++west) {
      cells.push_back({.south_deg = south, .west_deg = west});
    }
  }
  return cells;
}

}  // namespace

class ElevationRaster::Source {
 public:
  explicit Source(fs::path path) : path_(std::move(path)) {}

  Result<Done> open();
  Result<std::vector<std::int16_t>> samples(TileCell cell, int side,
                                            const Progress& progress) const;

  int side = 0;
  std::vector<TileCell> cells;

 private:
  Result<Done> read_heading();
  Result<Done> locate(const QuietGdal& gdal);
  std::optional<Extent> extent(OGRCoordinateTransformation& to_degrees) const;
  std::optional<double> spacing_deg(OGRCoordinateTransformation& to_degrees) const;
  WarpOptions warp_options(GDALDataset& target) const;
  std::int16_t sample_of(float value) const;

  double x_of(double column, double row) const {
    return place_[0] + column * place_[1] + row * place_[2];
  }
  double y_of(double column, double row) const {
    return place_[3] + column * place_[4] + row * place_[5];
  }

  fs::path path_;
  Dataset dataset_;
  std::array<double, 6> place_{};  // GDAL's affine transform, pixels to coordinates
  double meters_per_value_ = 1.0;
  double meters_at_zero_ = 0.0;
  std::optional<double> void_value_;
};

Result<Done> ElevationRaster::Source::open() {
  const QuietGdal gdal;
  dataset_.reset(GDALDataset::Open(path_.string().c_str(), GDAL_OF_RASTER | GDAL_OF_VERBOSE_ERROR,
                                   kLocalFormats.data()));
  if (!dataset_) return unusable(path_, gdal.failure());
  const auto readable = read_heading();
  return readable ? locate(gdal) : readable;
}

Result<Done> ElevationRaster::Source::read_heading() {
  if (dataset_->GetRasterCount() != 1) {
    return unusable(path_, fmt::format("it has {} bands, but a raster of heights has one",
                                       dataset_->GetRasterCount()));
  }
  if (dataset_->GetSpatialRef() == nullptr || dataset_->GetGeoTransform(place_.data()) != CE_None) {
    return unusable(path_, "it does not say where on earth it is");
  }
  GDALRasterBand& band = *dataset_->GetRasterBand(1);
  const auto unit = meters_per_unit(band.GetUnitType());
  if (!unit) return unusable(path_, fmt::format("its heights are in '{}'", band.GetUnitType()));
  meters_per_value_ = band.GetScale() * *unit;
  meters_at_zero_ = band.GetOffset() * *unit;
  int has_void_value = 0;
  const double void_value = band.GetNoDataValue(&has_void_value);
  if (has_void_value != 0) {
    void_value_ = void_value;
  } else if (band.GetRasterDataType() == GDT_Int16) {
    // The usual void value in 16-bit rasters, even if they do not declare it.
    void_value_ = kVoidSample;
  }
  return Done{};
}

Result<Done> ElevationRaster::Source::locate(const QuietGdal& gdal) {
  OGRSpatialReference reference = *dataset_->GetSpatialRef();
  reference.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  const OGRSpatialReference degrees = wgs84();
  const Transformation to_degrees(OGRCreateCoordinateTransformation(&reference, &degrees));
  if (!to_degrees) return unusable(path_, gdal.failure());
  const auto reached = extent(*to_degrees);
  const auto spacing = spacing_deg(*to_degrees);
  if (!reached || !spacing) return unusable(path_, "cannot find its place on earth");
  cells = cells_of(*reached);
  constexpr double kCoarsestFine_deg = 2.0 / 3600.0;
  side = *spacing <= kCoarsestFine_deg ? Tile::kSide1ArcSecond : Tile::kSide3ArcSeconds;
  return Done{};
}

// From the centers of its pixels: heights are known no farther.
std::optional<Extent> ElevationRaster::Source::extent(
    OGRCoordinateTransformation& to_degrees) const {
  const double right = dataset_->GetRasterXSize() - 0.5;
  const double bottom = dataset_->GetRasterYSize() - 0.5;
  const auto x =
      std::minmax({x_of(0.5, 0.5), x_of(right, 0.5), x_of(0.5, bottom), x_of(right, bottom)});
  const auto y =
      std::minmax({y_of(0.5, 0.5), y_of(right, 0.5), y_of(0.5, bottom), y_of(right, bottom)});
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

// The larger spacing of neighboring pixels in the middle of the raster, in degrees of latitude.
std::optional<double> ElevationRaster::Source::spacing_deg(
    OGRCoordinateTransformation& to_degrees) const {
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

WarpOptions ElevationRaster::Source::warp_options(GDALDataset& target) const {
  WarpOptions options(GDALCreateWarpOptions());
  options->hSrcDS = dataset_.get();
  options->hDstDS = &target;
  options->eResampleAlg = GRA_Bilinear;
  GDALWarpInitDefaultBandMapping(options.get(), 1);
  if (void_value_) GDALWarpInitSrcNoDataReal(options.get(), *void_value_);
  GDALWarpInitDstNoDataReal(options.get(), static_cast<double>(kNotReached));
  options->papszWarpOptions = CSLSetNameValue(options->papszWarpOptions, "INIT_DEST", "NO_DATA");
  void* const exact = GDALCreateGenImgProjTransformer2(options->hSrcDS, options->hDstDS, nullptr);
  if (exact == nullptr) return nullptr;
  constexpr double kLargestError_pixels = 0.01;
  options->pTransformerArg =
      GDALCreateApproxTransformer(GDALGenImgProjTransform, exact, kLargestError_pixels);
  GDALApproxTransformerOwnsSubtransformer(options->pTransformerArg, TRUE);
  options->pfnTransformer = GDALApproxTransform;
  return options;
}

std::int16_t ElevationRaster::Source::sample_of(float value) const {
  if (value == kNotReached) return kVoidSample;
  const double height_m = static_cast<double>(value) * meters_per_value_ + meters_at_zero_;
  const bool possible = height_m >= kLowestGround_m && height_m <= kHighestGround_m;
  return possible ? static_cast<std::int16_t>(std::lround(height_m)) : kVoidSample;
}

namespace {

struct Watch {
  const ElevationRaster::Progress& progress;
  bool stopped = false;

  static int CPL_STDCALL hear(double fraction, const char*, void* self) {
    auto& watch = *static_cast<Watch*>(self);
    watch.stopped = watch.stopped || !watch.progress(std::min(fraction, 1.0));
    return watch.stopped ? FALSE : TRUE;
  }
};

}  // namespace

Result<std::vector<std::int16_t>> ElevationRaster::Source::samples(TileCell cell, int tile_side,
                                                                   const Progress& progress) const {
  const QuietGdal gdal;
  GDALDriver* const memory = GetGDALDriverManager()->GetDriverByName("MEM");
  const Dataset target(memory->Create("", tile_side, tile_side, 1, GDT_Float32, nullptr));
  if (!target) return unusable(path_, gdal.failure());
  // Samples are the centers of pixels.
  const double spacing_deg = 1.0 / (tile_side - 1);
  std::array<double, 6> place = {cell.west_deg - spacing_deg / 2,      spacing_deg, 0.0,
                                 cell.south_deg + 1 + spacing_deg / 2, 0.0,         -spacing_deg};
  target->SetGeoTransform(place.data());
  const OGRSpatialReference degrees = wgs84();
  target->SetSpatialRef(&degrees);

  const WarpOptions options = warp_options(*target);
  if (!options) return unusable(path_, gdal.failure());
  Watch watch{.progress = progress};
  options->pfnProgress = Watch::hear;
  options->pProgressArg = &watch;
  std::vector<float> values(static_cast<std::size_t>(tile_side) *
                            static_cast<std::size_t>(tile_side));
  GDALWarpOperation warp;
  const bool read = warp.Initialize(options.get()) == CE_None &&
                    warp.ChunkAndWarpImage(0, 0, tile_side, tile_side) == CE_None &&
                    target->GetRasterBand(1)->RasterIO(GF_Read, 0, 0, tile_side, tile_side,
                                                       values.data(), tile_side, tile_side,
                                                       GDT_Float32, 0, 0, nullptr) == CE_None;
  if (watch.stopped) return std::vector<std::int16_t>();
  if (!read) return unusable(path_, gdal.failure());
  std::vector<std::int16_t> samples(values.size());
  std::transform(values.begin(), values.end(), samples.begin(),
                 [this](float value) { return sample_of(value); });
  return samples;
}

ElevationRaster::ElevationRaster(std::unique_ptr<Source> source) : source_(std::move(source)) {}
ElevationRaster::ElevationRaster(ElevationRaster&&) noexcept = default;
ElevationRaster::~ElevationRaster() = default;

Result<ElevationRaster> ElevationRaster::open(const fs::path& path) {
  auto source = std::make_unique<Source>(path);
  const auto opened = source->open();
  if (!opened) return opened.error();
  return ElevationRaster(std::move(source));
}

int ElevationRaster::suitable_side() const {
  return source_->side;
}

const std::vector<TileCell>& ElevationRaster::cells() const {
  return source_->cells;
}

Result<std::vector<std::int16_t>> ElevationRaster::samples(TileCell cell, int side,
                                                           const Progress& progress) const {
  return source_->samples(cell, side, progress);
}

}  // namespace mastwise::platform
