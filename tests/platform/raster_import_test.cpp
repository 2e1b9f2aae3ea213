#include "platform/raster_import.hpp"

#include "core/terrain/tile_source.hpp"
#include "platform/tile_folder.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>
#include <cmath>
#include <fstream>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::Tile;
using terrain::TileCell;

constexpr double kNoHeight = -32768.0;

bool go_on(double) {
  return true;
}

// Smooth hills: over one spacing of 3 arc seconds a straight line is within 0.02 m of them.
double hills_m(double latitude_deg, double longitude_deg) {
  return 800.0 + 300.0 * std::sin(40.0 * latitude_deg) + 200.0 * std::cos(30.0 * longitude_deg);
}

struct RasterPlan {
  std::string crs;
  int columns, rows;
  double left, top, spacing;  // of the outer edge of the first pixel, in the unit of the crs
  GDALDataType type = GDT_Float32;
  double unit_m = 1.0;
  std::string unit = "";
};

using DatasetPointer = std::unique_ptr<GDALDataset, void (*)(GDALDataset*)>;

DatasetPointer closing(GDALDataset* dataset) {
  REQUIRE(dataset != nullptr);
  return {dataset, [](GDALDataset* open) { GDALClose(open); }};
}

DatasetPointer make_raster(const char* driver, const fs::path& path, const RasterPlan& plan,
                           const std::function<double(double, double)>& height_m) {
  GDALAllRegister();
  auto dataset = closing(GetGDALDriverManager()->GetDriverByName(driver)->Create(
      path.string().c_str(), plan.columns, plan.rows, 1, plan.type, nullptr));
  OGRSpatialReference crs;
  REQUIRE(crs.SetFromUserInput(plan.crs.c_str()) == OGRERR_NONE);
  crs.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  dataset->SetSpatialRef(&crs);
  std::array<double, 6> place = {plan.left, plan.spacing, 0.0, plan.top, 0.0, -plan.spacing};
  dataset->SetGeoTransform(place.data());
  OGRSpatialReference degrees;
  degrees.SetFromUserInput("EPSG:4326");
  degrees.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  const std::unique_ptr<OGRCoordinateTransformation> to_degrees(
      OGRCreateCoordinateTransformation(&crs, &degrees));
  GDALRasterBand& band = *dataset->GetRasterBand(1);
  band.SetNoDataValue(kNoHeight);
  if (!plan.unit.empty()) band.SetUnitType(plan.unit.c_str());
  const auto columns = static_cast<std::size_t>(plan.columns);
  for (int row = 0; row < plan.rows; ++row) {
    std::vector<double> x(columns);
    std::vector<double> y(columns, plan.top - (row + 0.5) * plan.spacing);
    for (std::size_t i = 0; i < columns; ++i) {
      x[i] = plan.left + (static_cast<double>(i) + 0.5) * plan.spacing;
    }
    REQUIRE(to_degrees->Transform(plan.columns, x.data(), y.data()));
    std::vector<float> values(columns);
    for (std::size_t i = 0; i < columns; ++i) {
      const double height = height_m(y[i], x[i]);
      values[i] = static_cast<float>(height == kNoHeight ? kNoHeight : height / plan.unit_m);
    }
    REQUIRE(band.RasterIO(GF_Write, 0, row, plan.columns, 1, values.data(), plan.columns, 1,
                          GDT_Float32, 0, 0, nullptr) == CE_None);
  }
  return dataset;
}

struct Comparison {
  double largest_m = 0.0;
  std::size_t known = 0;
};

// Whether all samples within some rows and columns are inside the tile and known.
bool amid_known(const Tile& tile, int row, int column, int reach) {
  const int last = tile.side() - 1;
  for (const int down : {-reach, reach}) {
    for (const int right : {-reach, reach}) {
      const int r = row + down;
      const int c = column + right;
      if (r < 0 || c < 0 || r > last || c > last) return false;
      if (tile.sample(r, c) == terrain::kVoidSample) return false;
    }
  }
  return true;
}

// The difference between a tile's samples and the surface. Compares only samples among known ones:
// the outermost are up to half a pixel outside the pixels' centers.
Comparison compare(const Tile& tile, const std::function<double(double, double)>& height_m) {
  Comparison comparison;
  const int last = tile.side() - 1;
  for (int row = 0; row <= last; ++row) {
    for (int column = 0; column <= last; ++column) {
      if (tile.sample(row, column) == terrain::kVoidSample) continue;
      ++comparison.known;
      if (!amid_known(tile, row, column, 1)) continue;
      const double surface_m = height_m(tile.cell().south_deg + 1 - static_cast<double>(row) / last,
                                        tile.cell().west_deg + static_cast<double>(column) / last);
      comparison.largest_m =
          std::max(comparison.largest_m, std::fabs(tile.sample(row, column) - surface_m));
    }
  }
  return comparison;
}

// 20 km square around 45 N, 8 E, where four cells meet.
const RasterPlan kUtm{"EPSG:32632", 220, 220, 411'000.0, 4'994'000.0, 90.0};

}  // namespace

TEST_CASE("a GeoTIFF in UTM becomes tiles with its surface") {
  const test::TemporaryFolder folder;
  make_raster("GTiff", folder / "hills.tif", kUtm, hills_m);
  double last = -1.0;
  bool rising = true;
  const auto done = import_raster(folder / "hills.tif", folder / "tiles", [&](double fraction) {
    rising = rising && fraction >= last && fraction <= 1.0 + 1e-9;
    last = fraction;
    return true;
  });
  REQUIRE(done);
  CHECK_FALSE(done->stopped);
  CHECK(rising);
  CHECK(last == Approx(1.0));
  CHECK(done->written == std::vector<TileCell>{{44, 7}, {44, 8}, {45, 7}, {45, 8}});
  const TileFolder tiles(folder / "tiles");
  std::size_t known = 0;
  for (const TileCell cell : done->written) {
    const auto tile = tiles.tile(cell);
    REQUIRE(tile);
    CHECK(tile->side() == 1201);
    const auto comparison = compare(*tile, hills_m);
    // Half a meter of rounding, and what bilinear interpolation of the hills loses.
    CHECK(comparison.largest_m < 0.6);
    CHECK(comparison.known > 1'000);
    known += comparison.known;
  }
  CHECK(known == done->new_heights);
  // 19.8 km square at 92.6 m by 65.5 m: 64,600 samples.
  CHECK(static_cast<double>(known) == Approx(64'600).epsilon(0.02));
  CHECK_FALSE(terrain::ground_height_m(tiles, *Position::at_deg(44.5, 7.5)));
  CHECK_FALSE(fs::exists(folder / "tiles/.import"));
}

TEST_CASE("a raster of 30 m becomes tiles of 1 arc second, and feet become meters") {
  const test::TemporaryFolder folder;
  const RasterPlan plan{"EPSG:32632", 200,         200,    430'000.0, 5'030'000.0,
                        30.0,         GDT_Float32, 0.3048, "ft"};
  make_raster("GTiff", folder / "hills.tif", plan, hills_m);
  const auto done = import_raster(folder / "hills.tif", folder / "tiles", go_on);
  REQUIRE(done);
  REQUIRE(done->written.size() == 1);
  const auto tile = TileFolder(folder / "tiles").tile(done->written[0]);
  REQUIRE(tile);
  CHECK(tile->side() == 3601);
  const auto comparison = compare(*tile, hills_m);
  CHECK(comparison.largest_m < 0.6);
  CHECK(comparison.known > 30'000);
}

TEST_CASE("a DTED cell becomes one tile with the same posts and voids") {
  const test::TemporaryFolder folder;
  const auto holed = [](double latitude_deg, double longitude_deg) {
    const bool hole = std::hypot(latitude_deg - 45.3, longitude_deg - 7.6) < 0.01;
    return hole ? kNoHeight : std::round(hills_m(latitude_deg, longitude_deg));
  };
  // DTED level 1: 1201 posts each way up to 50 degrees of latitude (MIL-PRF-89020B).
  const double spacing = 1.0 / 1200.0;
  const RasterPlan plan{"EPSG:4326",        1201,    1201,     7.0 - spacing / 2,
                        46.0 + spacing / 2, spacing, GDT_Int16};
  {
    const auto source = make_raster("MEM", "", plan, holed);
    auto* const dted = GetGDALDriverManager()->GetDriverByName("DTED");
    REQUIRE(dted != nullptr);
    closing(dted->CreateCopy((folder / "n45.dt1").string().c_str(), source.get(), FALSE, nullptr,
                             nullptr, nullptr));
  }
  const auto done = import_raster(folder / "n45.dt1", folder / "tiles", go_on);
  REQUIRE(done);
  CHECK(done->written == std::vector<TileCell>{{45, 7}});
  const auto tile = TileFolder(folder / "tiles").tile({45, 7});
  REQUIRE(tile);
  int different = 0;
  int voids = 0;
  for (int row = 0; row < 1201; ++row) {
    for (int column = 0; column < 1201; ++column) {
      const double post_m = holed(46.0 - row * spacing, 7.0 + column * spacing);
      different += tile->sample(row, column) != post_m ? 1 : 0;
      voids += tile->sample(row, column) == terrain::kVoidSample ? 1 : 0;
    }
  }
  CHECK(different == 0);
  CHECK(voids > 400);
}

TEST_CASE("an existing tile keeps its heights and its spacing, and only its voids are filled",
          "[linux]") {
  const test::TemporaryFolder folder;
  fs::create_directory(folder / "tiles");
  const auto west_half = [](double, double longitude_deg) {
    return longitude_deg < 7.95 ? 77.0 : kNoHeight;
  };
  test::write_bytes(folder / "tiles/n44e007.hgt", test::made_tile_bytes({44, 7}, 3601, west_half));
  make_raster("GTiff", folder / "hills.tif", kUtm, hills_m);
  const auto done = import_raster(folder / "hills.tif", folder / "tiles", go_on);
  REQUIRE(done);
  CHECK(done->written.size() == 4);
  const TileFolder tiles(folder / "tiles");
  const auto tile = tiles.tile({44, 7});
  REQUIRE(tile);
  CHECK(tile->side() == 3601);
  CHECK(fs::exists(folder / "tiles/n44e007.hgt"));
  CHECK_FALSE(fs::exists(folder / "tiles/N44E007.hgt"));
  int kept = 0;
  double largest_m = 0.0;
  int filled = 0;
  const int kStep = test::kSanitized ? 40 : 1;
  for (int row = 0; row < 3601; row += kStep) {
    for (int column = 0; column < 3601; ++column) {
      const auto sample = tile->sample(row, column);
      const double longitude_deg = 7.0 + column / 3600.0;
      if (longitude_deg < 7.95) {
        kept += sample == 77 ? 1 : 0;
      } else if (sample != terrain::kVoidSample && amid_known(*tile, row, column, 2)) {
        ++filled;
        largest_m =
            std::max(largest_m, std::fabs(sample - hills_m(45.0 - row / 3600.0, longitude_deg)));
      }
    }
  }
  CHECK(kept == (3600 / kStep + 1) * 3420);
  CHECK(filled > 10'000 / kStep);
  CHECK(largest_m < 0.6);

  const auto content = folder.content();
  const auto again = import_raster(folder / "hills.tif", folder / "tiles", go_on);
  REQUIRE(again);
  CHECK(again->written.empty());
  CHECK(again->new_heights == 0);
  CHECK(folder.content() == content);
}

TEST_CASE("a raster finer than the tile is averaged, not picked from") {
  const test::TemporaryFolder folder;
  fs::create_directory(folder / "tiles");
  test::write_bytes(folder / "tiles/N45E007.hgt",
                    test::made_tile_bytes({45, 7}, 1201, [](double, double) { return kNoHeight; }));
  // Stripes of 1 arc second, 0 and 300 m in turn: every third sample alone would keep them.
  const RasterPlan plan{"EPSG:4326", 240, 240, 7.5, 45.5, 1.0 / 3600.0};
  make_raster("GTiff", folder / "stripes.tif", plan, [](double, double longitude_deg) {
    return static_cast<long>(std::floor(longitude_deg * 3600.0)) % 2 == 0 ? 0.0 : 300.0;
  });
  REQUIRE(import_raster(folder / "stripes.tif", folder / "tiles", go_on));
  const auto tile = TileFolder(folder / "tiles").tile({45, 7});
  for (int row = 605; row < 675; row += 10) {
    for (int column = 605; column < 675; ++column) {
      REQUIRE(tile->sample(row, column) == Approx(150.0).margin(40.0));
    }
  }
}

TEST_CASE("a raster over the antimeridian fills the cells on both sides") {
  const test::TemporaryFolder folder;
  // UTM zone 1 south, Fiji: 180 degrees is about 180 km east of the zone's false origin.
  const RasterPlan plan{"EPSG:32701", 120, 120, 175'000.0, 8'180'000.0, 90.0};
  make_raster("GTiff", folder / "flat.tif", plan, [](double, double) { return 55.0; });
  const auto done = import_raster(folder / "flat.tif", folder / "tiles", go_on);
  REQUIRE(done);
  CHECK(done->written == std::vector<TileCell>{{-17, 179}, {-17, -180}});
  const TileFolder tiles(folder / "tiles");
  CHECK(terrain::ground_height_m(tiles, *Position::at_deg(-16.5, 179.99)) == 55.0);
  CHECK(terrain::ground_height_m(tiles, *Position::at_deg(-16.5, -179.99)) == 55.0);
}

TEST_CASE("a truncated raster is an error and changes nothing") {
  const test::TemporaryFolder folder;
  fs::create_directory(folder / "tiles");
  test::write_bytes(folder / "tiles/N44E007.hgt",
                    test::made_tile_bytes({44, 7}, 1201, [](double, double) { return kNoHeight; }));
  make_raster("GTiff", folder / "hills.tif", kUtm, hills_m);
  const auto whole = fs::file_size(folder / "hills.tif");
  for (const double part : {0.95, 0.5, 0.01, 0.0}) {
    fs::resize_file(folder / "hills.tif",
                    static_cast<std::uintmax_t>(static_cast<double>(whole) * part));
    const auto content = folder.content();
    const auto done = import_raster(folder / "hills.tif", folder / "tiles", go_on);
    INFO(part);
    REQUIRE_FALSE(done);
    CHECK(done.error().where.find("hills.tif") != std::string::npos);
    CHECK(folder.content() == content);
  }
}

TEST_CASE("a stop midway changes nothing") {
  const test::TemporaryFolder folder;
  make_raster("GTiff", folder / "hills.tif", kUtm, hills_m);
  fs::create_directory(folder / "tiles");
  const auto content = folder.content();
  for (const double stop_at : {0.0, 0.3, 0.6, 0.99}) {
    const auto done = import_raster(folder / "hills.tif", folder / "tiles",
                                    [stop_at](double fraction) { return fraction < stop_at; });
    INFO(stop_at);
    REQUIRE(done);
    CHECK(done->stopped);
    CHECK(done->written.empty());
    CHECK(done->new_heights == 0);
    CHECK(folder.content() == content);
  }
}

TEST_CASE("a raster that only names other files is refused: they may be on a server") {
  const test::TemporaryFolder folder;
  make_raster("GTiff", folder / "hills.tif", kUtm, hills_m);
  std::ofstream(folder / "hills.vrt")
      << R"(<VRTDataset rasterXSize="220" rasterYSize="220"><SRS>EPSG:32632</SRS>)"
         R"(<GeoTransform>411000, 90, 0, 4994000, 0, -90</GeoTransform>)"
         R"(<VRTRasterBand dataType="Float32" band="1"><SimpleSource>)"
         R"(<SourceFilename relativeToVRT="1">hills.tif</SourceFilename>)"
         R"(<SourceBand>1</SourceBand></SimpleSource></VRTRasterBand></VRTDataset>)";
  const auto done = import_raster(folder / "hills.vrt", folder / "tiles", go_on);
  REQUIRE_FALSE(done);
  CHECK(done.error().where.find("hills.vrt") != std::string::npos);
  CHECK(import_raster(folder / "hills.tif", folder / "tiles", go_on));
}

TEST_CASE("a file that is not a height raster is refused with the reason") {
  const test::TemporaryFolder folder;
  const auto refused = [&](const std::string& name) {
    const auto done = import_raster(folder / name, folder / "tiles", go_on);
    REQUIRE_FALSE(done);
    CHECK_FALSE(fs::exists(folder / "tiles"));
    return done.error().message();
  };
  CHECK(refused("missing.tif").find("missing.tif") != std::string::npos);
  const std::string text = "not a raster";
  test::write_bytes(folder / "notes.tif", std::as_bytes(std::span(text)));
  CHECK(refused("notes.tif").find("notes.tif") != std::string::npos);

  RasterPlan fathoms = kUtm;
  fathoms.unit = "fathom";
  make_raster("GTiff", folder / "sea.tif", fathoms, hills_m);
  CHECK(refused("sea.tif").find("'fathom'") != std::string::npos);

  GDALDriver& geotiff = *GetGDALDriverManager()->GetDriverByName("GTiff");
  closing(geotiff.Create((folder / "photo.tif").string().c_str(), 10, 10, 3, GDT_Byte, nullptr));
  CHECK(refused("photo.tif").find("3 bands") != std::string::npos);
  closing(geotiff.Create((folder / "nowhere.tif").string().c_str(), 10, 10, 1, GDT_Int16, nullptr));
  CHECK(refused("nowhere.tif").find("where on earth") != std::string::npos);
}

}  // namespace mastwise::platform
