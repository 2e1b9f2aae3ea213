#include "platform/elevation_raster.hpp"
#include "platform/gdal_raster.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

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

// Heights are known no farther than the centers of the outer pixels.
constexpr RasterKind kElevation{
    .name = "elevation raster",
    .remedy = "choose an undamaged GeoTIFF, DTED or other raster of heights",
    .inset_pixels = 0.5};

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

class ElevationRaster::Source {
 public:
  explicit Source(GdalRaster raster) : raster_(std::move(raster)) {}

  Result<Done> read_heading();
  Result<std::vector<std::int16_t>> samples(TileCell cell, int side,
                                            const Progress& progress) const;
  int suitable_side() const {
    constexpr double kCoarsestFine_deg = 2.0 / 3600.0;
    return raster_.spacing_deg() <= kCoarsestFine_deg ? Tile::kSide1ArcSecond
                                                      : Tile::kSide3ArcSeconds;
  }
  const std::vector<TileCell>& cells() const { return raster_.cells(); }

 private:
  std::int16_t sample_of(float value) const;

  GdalRaster raster_;
  double meters_per_value_ = 1.0;
  double meters_at_zero_ = 0.0;
  std::optional<double> void_value_;
};

Result<Done> ElevationRaster::Source::read_heading() {
  GDALRasterBand& band = raster_.band();
  const auto unit = meters_per_unit(band.GetUnitType());
  if (!unit) return raster_.unusable(fmt::format("its heights are in '{}'", band.GetUnitType()));
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

std::int16_t ElevationRaster::Source::sample_of(float value) const {
  if (value == kNotReached) return kVoidSample;
  const double height_m = static_cast<double>(value) * meters_per_value_ + meters_at_zero_;
  const bool possible = height_m >= kLowestGround_m && height_m <= kHighestGround_m;
  return possible ? static_cast<std::int16_t>(std::lround(height_m)) : kVoidSample;
}

Result<std::vector<std::int16_t>> ElevationRaster::Source::samples(TileCell cell, int side,
                                                                   const Progress& progress) const {
  // Samples are the centers of pixels.
  const double spacing_deg = 1.0 / (side - 1);
  const DegreeGrid grid{.west_deg = cell.west_deg - spacing_deg / 2,
                        .north_deg = cell.south_deg + 1 + spacing_deg / 2,
                        .spacing_deg = spacing_deg,
                        .columns = side,
                        .rows = side};
  Watch watch{.progress = progress};
  std::vector<float> values(static_cast<std::size_t>(side) * static_cast<std::size_t>(side));
  const auto read = raster_.read(grid,
                                 {.resampling = GRA_Bilinear,
                                  .type = GDT_Float32,
                                  .void_value = void_value_,
                                  .not_reached = static_cast<double>(kNotReached),
                                  .progress = Watch::hear,
                                  .progress_argument = &watch},
                                 values.data());
  if (watch.stopped) return std::vector<std::int16_t>();
  if (!read) return read.error();
  std::vector<std::int16_t> samples(values.size());
  std::transform(values.begin(), values.end(), samples.begin(),
                 [this](float value) { return sample_of(value); });
  return samples;
}

ElevationRaster::ElevationRaster(std::unique_ptr<Source> source) : source_(std::move(source)) {}
ElevationRaster::ElevationRaster(ElevationRaster&&) noexcept = default;
ElevationRaster::~ElevationRaster() = default;

Result<ElevationRaster> ElevationRaster::open(const fs::path& path) {
  auto raster = GdalRaster::open(path, kElevation);
  if (!raster) return raster.error();
  auto source = std::make_unique<Source>(*std::move(raster));
  const auto readable = source->read_heading();
  if (!readable) return readable.error();
  return ElevationRaster(std::move(source));
}

int ElevationRaster::suitable_side() const {
  return source_->suitable_side();
}

const std::vector<TileCell>& ElevationRaster::cells() const {
  return source_->cells();
}

Result<std::vector<std::int16_t>> ElevationRaster::samples(TileCell cell, int side,
                                                           const Progress& progress) const {
  return source_->samples(cell, side, progress);
}

}  // namespace mastwise::platform
