#include "core/landcover/cover_tile.hpp"
#include "platform/cover_raster.hpp"
#include "platform/gdal_raster.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using landcover::ClassTable;
using landcover::CoverClass;
using landcover::CoverTile;
using terrain::TileCell;

constexpr RasterKind kLandCover{
    .name = "land cover raster",
    .remedy = "choose an undamaged GeoTIFF or other raster of land cover classes",
    .inset_pixels = 0.0};

constexpr int kSide = CoverTile::kSide;
constexpr int kMostPlaces = 10;  // across an area
constexpr int kStripAreas = 60;  // rows of areas read at once: 7.2 MB at 100 places an area
static_assert(kSide % kStripAreas == 0);

// Pixels larger than this say too little about an area of 3 arc seconds [our choice, no source].
constexpr double kCoarsest_deg = 12.0 / 3600.0;

// A code for places that the raster does not cover: one that says nothing, or that no class has.
std::uint8_t code_without_class(const ClassTable& table) {
  if (!table.no_data.empty()) return table.no_data.front();
  int code = 255;
  while (code > 0 && table.rows.count(static_cast<std::uint8_t>(code)) != 0) --code;
  return static_cast<std::uint8_t>(code);
}

using Votes = std::array<std::uint32_t, landcover::kCoverClasses>;

}  // namespace

class CoverRaster::Source {
 public:
  Source(GdalRaster raster, fs::path path) : raster_(std::move(raster)), path_(std::move(path)) {}

  Result<Done> read_heading();
  Result<landcover::RasterTraits> traits() const;
  Result<std::vector<CoverClass>> classes(TileCell cell, const ClassTable& table,
                                          std::array<bool, 256>& unlisted,
                                          const Progress& progress) const;
  const std::vector<TileCell>& cells() const { return raster_.cells(); }

 private:
  void count_votes(const std::vector<std::uint8_t>& codes, int first_area,
                   const std::array<CoverClass, 256>& by_code,
                   std::vector<CoverClass>& classes) const;

  GdalRaster raster_;
  fs::path path_;
  std::optional<std::uint8_t> void_code_;
  int places_ = 1;
};

Result<Done> CoverRaster::Source::read_heading() {
  GDALRasterBand& band = raster_.band();
  if (band.GetRasterDataType() != GDT_Byte) {
    return raster_.unusable("its values are not codes of one byte");
  }
  if (raster_.spacing_deg() > kCoarsest_deg) {
    return raster_.unusable("its pixels are larger than 12 arc seconds, some 370 m");
  }
  int has_void_code = 0;
  const double void_code = band.GetNoDataValue(&has_void_code);
  if (has_void_code != 0 && void_code >= 0.0 && void_code <= 255.0) {
    void_code_ = static_cast<std::uint8_t>(void_code);
  }
  // A hundredth less, so that rounding in the raster's spacing adds no place.
  const double pixels = 1.0 / kSide / raster_.spacing_deg();
  places_ = std::clamp(static_cast<int>(std::ceil(pixels - 0.01)), 1, kMostPlaces);
  return Done{};
}

Result<landcover::RasterTraits> CoverRaster::Source::traits() const {
  const QuietGdal gdal;
  landcover::RasterTraits traits{.file_name = path_.filename().string()};
  GDALRasterBand& band = raster_.band();
  if (const GDALColorTable* const colors = band.GetColorTable()) {
    for (int code = 0; code < std::min(colors->GetColorEntryCount(), 256); ++code) {
      const GDALColorEntry& color = *colors->GetColorEntry(code);
      traits.palette.push_back({.red = static_cast<std::uint8_t>(color.c1),
                                .green = static_cast<std::uint8_t>(color.c2),
                                .blue = static_cast<std::uint8_t>(color.c3)});
    }
  }
  constexpr int kWindows = 8, kWindow = 256;
  const int columns = std::min(kWindow, band.GetXSize());
  const int rows = std::min(kWindow, band.GetYSize());
  std::vector<std::uint8_t> codes(static_cast<std::size_t>(columns) *
                                  static_cast<std::size_t>(rows));
  for (int down = 0; down < kWindows; ++down) {
    for (int right = 0; right < kWindows; ++right) {
      const int column = (band.GetXSize() - columns) / (kWindows - 1) * right;
      const int row = (band.GetYSize() - rows) / (kWindows - 1) * down;
      if (band.RasterIO(GF_Read, column, row, columns, rows, codes.data(), columns, rows, GDT_Byte,
                        0, 0, nullptr) != CE_None) {
        return raster_.unusable(gdal.failure());
      }
      for (const std::uint8_t code : codes) traits.codes[code] = true;
    }
  }
  if (void_code_) traits.codes[*void_code_] = false;
  return traits;
}

// Codes of a strip to the classes of its areas.
void CoverRaster::Source::count_votes(const std::vector<std::uint8_t>& codes, int first_area,
                                      const std::array<CoverClass, 256>& by_code,
                                      std::vector<CoverClass>& classes) const {
  std::vector<Votes> votes(kSide);
  const auto* code = codes.data();
  for (int area = 0; area < kStripAreas; ++area) {
    std::fill(votes.begin(), votes.end(), Votes{});
    for (int row = 0; row < places_; ++row) {
      for (Votes& of_area : votes) {
        for (int place = 0; place < places_; ++place, ++code) {
          ++of_area[static_cast<std::size_t>(by_code[*code])];
        }
      }
    }
    const int north = kSide - 1 - (first_area + area);
    for (int east = 0; east < kSide; ++east) {
      classes[static_cast<std::size_t>(CoverTile::place_of(north, east))] =
          landcover::commonest(votes[static_cast<std::size_t>(east)]);
    }
  }
}

Result<std::vector<CoverClass>> CoverRaster::Source::classes(TileCell cell, const ClassTable& table,
                                                             std::array<bool, 256>& unlisted,
                                                             const Progress& progress) const {
  std::array<CoverClass, 256> by_code{};
  for (std::size_t code = 0; code < by_code.size(); ++code) {
    by_code[code] = table.of(static_cast<std::uint8_t>(code));
  }
  const std::uint8_t not_reached = code_without_class(table);
  std::vector<CoverClass> classes(CoverTile::kClassBytes, CoverClass::unknown);
  DegreeGrid grid{.west_deg = static_cast<double>(cell.west_deg),
                  .spacing_deg = 1.0 / (kSide * places_),
                  .columns = kSide * places_,
                  .rows = kStripAreas * places_};
  std::vector<std::uint8_t> codes(static_cast<std::size_t>(grid.columns) *
                                  static_cast<std::size_t>(grid.rows));
  for (int area = 0; area < kSide; area += kStripAreas) {
    if (!progress(static_cast<double>(area) / kSide)) return std::vector<CoverClass>();
    grid.north_deg = cell.south_deg + 1 - static_cast<double>(area) / kSide;
    const auto read = raster_.read(grid,
                                   {.resampling = GRA_NearestNeighbour,
                                    .type = GDT_Byte,
                                    .void_value = void_code_,
                                    .not_reached = static_cast<double>(not_reached)},
                                   codes.data());
    if (!read) return read.error();
    std::array<bool, 256> found{};
    for (const std::uint8_t code : codes) found[code] = true;
    for (std::size_t code = 0; code < found.size(); ++code) {
      if (found[code] && code != not_reached && !table.lists(static_cast<std::uint8_t>(code))) {
        unlisted[code] = true;
      }
    }
    count_votes(codes, area, by_code, classes);
  }
  if (!progress(1.0)) return std::vector<CoverClass>();
  return classes;
}

CoverRaster::CoverRaster(std::unique_ptr<Source> source) : source_(std::move(source)) {}
CoverRaster::CoverRaster(CoverRaster&&) noexcept = default;
CoverRaster::~CoverRaster() = default;

Result<CoverRaster> CoverRaster::open(const fs::path& path) {
  auto raster = GdalRaster::open(path, kLandCover);
  if (!raster) return raster.error();
  auto source = std::make_unique<Source>(*std::move(raster), path);
  const auto readable = source->read_heading();
  if (!readable) return readable.error();
  return CoverRaster(std::move(source));
}

Result<landcover::RasterTraits> CoverRaster::traits() const {
  return source_->traits();
}

const std::vector<TileCell>& CoverRaster::cells() const {
  return source_->cells();
}

Result<std::vector<CoverClass>> CoverRaster::classes(TileCell cell, const ClassTable& table,
                                                     std::array<bool, 256>& unlisted,
                                                     const Progress& progress) const {
  return source_->classes(cell, table, unlisted, progress);
}

}  // namespace mastwise::platform
