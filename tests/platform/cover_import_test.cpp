#include "platform/cover_import.hpp"

#include "core/landcover/cover_source.hpp"
#include "platform/cover_folder.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/made_raster.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <gdal_priv.h>
#include <gdal_utils.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using landcover::ClassTable;
using landcover::CoverClass;
using test::CodesPlan;
using test::write_codes;

bool carry_on(double) {
  return true;
}

std::vector<ClassTable> ready_tables() {
  const auto tables = load_class_tables(test::source_folder() + "/assets/landcover");
  REQUIRE(tables);
  return *tables;
}

// USGS LCMAP's primary land cover, for tests: class list from memory.
ClassTable lcmap_table() {
  const auto table = landcover::read_class_table(R"json({
    "name": "LCMAP", "notice": "USGS LCMAP (public domain)", "files": ["LCMAP_"], "no_data": [0],
    "classes": {
      "1": {"name": "Developed", "class": "urban"}, "2": {"name": "Cropland", "class": "open"},
      "3": {"name": "Grass or shrub", "class": "open"}, "4": {"name": "Tree", "class": "trees"},
      "5": {"name": "Water", "class": "water"}, "6": {"name": "Wetland", "class": "open"},
      "7": {"name": "Ice", "class": "open"}, "8": {"name": "Barren", "class": "open"}}})json");
  REQUIRE(table);
  return *table;
}

// 0.1 degree at 10 m from 45.5 N 7.5 E southward and eastward, 120 by 120 areas of 10 by 10 pixels.
constexpr double kTenMeters_deg = 1.0 / 12'000.0;
CodesPlan small_plan() {
  return {.columns = 1200, .rows = 1200, .left = 7.5, .top = 45.5, .spacing = kTenMeters_deg};
}

// Writes a window of a raster: first column and row, columns, rows. Palette and void code stay.
void cut_pixels(const fs::path& from, const fs::path& to, const std::array<int, 4>& window) {
  GDALAllRegister();
  GDALDatasetH source = GDALOpen(from.string().c_str(), GA_ReadOnly);
  REQUIRE(source != nullptr);
  std::vector<std::string> words{"-srcwin"};
  for (const int pixel : window) words.push_back(std::to_string(pixel));
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  GDALTranslateOptions* const options = GDALTranslateOptionsNew(arguments.data(), nullptr);
  GDALDatasetH written = GDALTranslate(to.string().c_str(), source, options, nullptr);
  GDALTranslateOptionsFree(options);
  REQUIRE(written != nullptr);
  GDALClose(written);
  GDALClose(source);
}

CoverClass class_of_area(const fs::path& folder, int east_of_left, int south_of_top) {
  const CoverFolder cover(folder);
  const auto tile = cover.tile({45, 7});
  REQUIRE(tile);
  return tile->at(599 - south_of_top, 600 + east_of_left);
}

}  // namespace

TEST_CASE("an area gets the class of most of its pixels") {
  const test::TemporaryFolder folder;
  // In each area the first `trees` of its 100 pixels are trees (10), the next `built` built-up
  // (50), the next `none` without data (0), all others grass (30) and crops (40) in turn.
  struct Area {
    int trees, built, none;
    CoverClass expected;
  };
  const std::vector<Area> areas{{100, 0, 0, CoverClass::trees},   {51, 0, 0, CoverClass::trees},
                                {49, 0, 0, CoverClass::open},    // grass and crops count together
                                {50, 0, 0, CoverClass::trees},   // a tie: what shields more
                                {0, 50, 0, CoverClass::urban},   // likewise
                                {50, 50, 0, CoverClass::urban},  // likewise, later in the order
                                {20, 0, 50, CoverClass::open},   // half is known
                                {49, 0, 51, CoverClass::unknown}, {0, 0, 100, CoverClass::unknown}};
  const auto code = [&areas](int column, int row) {
    const Area& area = areas[static_cast<std::size_t>(column / 10) % areas.size()];
    const int pixel = column % 10 + 10 * (row % 10);
    if (pixel < area.trees) return 10;
    if (pixel < area.trees + area.built) return 50;
    if (pixel < area.trees + area.built + area.none) return 0;
    return pixel % 2 == 0 ? 30 : 40;
  };
  write_codes(folder / "esa_worldcover_10m_cut.tif", small_plan(), code);
  const auto done = import_cover(folder / "esa_worldcover_10m_cut.tif", folder / "tiles",
                                 ready_tables(), "", carry_on);
  REQUIRE(done);
  CHECK(done->table == "ESA WorldCover");
  CHECK(done->written == std::vector<terrain::TileCell>{{45, 7}});
  CHECK(done->unlisted_codes.empty());
  for (int east : {0, 45, 99}) {
    for (int south : {0, 7, 119}) {
      for (std::size_t i = 0; i < areas.size(); ++i) {
        INFO(i << " east " << east << " south " << south);
        CHECK(class_of_area(folder / "tiles", east + static_cast<int>(i), south) ==
              areas[static_cast<std::size_t>(east + static_cast<int>(i)) % areas.size()].expected);
      }
    }
  }
  CHECK(class_of_area(folder / "tiles", -1, 0) == CoverClass::unknown);
  CHECK(class_of_area(folder / "tiles", 120, 0) == CoverClass::unknown);
}

TEST_CASE("a second import fills unknown areas and changes no known one") {
  const test::TemporaryFolder folder;
  const auto tables = ready_tables();
  write_codes(folder / "ESA_WorldCover_10m_a.tif", small_plan(),
              [](int column, int) { return column < 600 ? 10 : 0; });
  write_codes(folder / "nlcd_b.tif", small_plan(),
              [](int column, int) { return column < 900 ? 11 : 82; });
  const auto first =
      import_cover(folder / "ESA_WorldCover_10m_a.tif", folder / "tiles", tables, "", carry_on);
  REQUIRE(first);
  CHECK(first->new_areas == 60 * 120);
  const auto second = import_cover(folder / "nlcd_b.tif", folder / "tiles", tables, "", carry_on);
  REQUIRE(second);
  CHECK(second->table == "NLCD");
  CHECK(second->new_areas == 60 * 120);
  CHECK(class_of_area(folder / "tiles", 59, 60) == CoverClass::trees);
  CHECK(class_of_area(folder / "tiles", 60, 60) == CoverClass::water);
  CHECK(class_of_area(folder / "tiles", 90, 60) == CoverClass::open);
  const CoverFolder cover(folder / "tiles");
  CHECK(cover.tile({45, 7})->notices() == std::vector<std::string>{first->notice, second->notice});
  const auto third = import_cover(folder / "nlcd_b.tif", folder / "tiles", tables, "", carry_on);
  REQUIRE(third);
  CHECK(third->written.empty());
  CHECK(third->new_areas == 0);
}

TEST_CASE("codes that the table does not list stay unknown and are told") {
  const test::TemporaryFolder folder;
  // Outside the sampled windows, so that the name alone decides.
  write_codes(folder / "codes.tif", small_plan(),
              [](int column, int row) { return row < 10 && column < 500 ? 77 : 10; });
  const auto tables = ready_tables();
  const auto refused = import_cover(folder / "codes.tif", folder / "tiles", tables, "", carry_on);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message().find("10, 77") != std::string::npos);
  CHECK(refused.error().message().find("ESA WorldCover") != std::string::npos);
  CHECK_FALSE(fs::exists(folder / "tiles"));
  const auto done =
      import_cover(folder / "codes.tif", folder / "tiles", tables, "esa worldcover", carry_on);
  REQUIRE(done);
  CHECK(done->unlisted_codes == std::vector<int>{77});
  CHECK(class_of_area(folder / "tiles", 10, 0) == CoverClass::unknown);
  CHECK(class_of_area(folder / "tiles", 10, 1) == CoverClass::trees);
  CHECK_FALSE(import_cover(folder / "codes.tif", folder / "tiles", tables, "NLCD", carry_on));
  CHECK_FALSE(import_cover(folder / "codes.tif", folder / "tiles", tables, "atlas", carry_on));
}

TEST_CASE("a declared void code is unknown even if the table has a class for it") {
  const test::TemporaryFolder folder;
  CodesPlan plan = small_plan();
  plan.void_code = 10;
  write_codes(folder / "ESA_WorldCover_10m_v.tif", plan,
              [](int column, int) { return column < 600 ? 10 : 80; });
  const auto done = import_cover(folder / "ESA_WorldCover_10m_v.tif", folder / "tiles",
                                 ready_tables(), "", carry_on);
  REQUIRE(done);
  CHECK(class_of_area(folder / "tiles", 10, 10) == CoverClass::unknown);
  CHECK(class_of_area(folder / "tiles", 70, 10) == CoverClass::water);
}

TEST_CASE("a stopped import of land cover changes nothing") {
  const test::TemporaryFolder folder;
  write_codes(folder / "ESA_WorldCover_10m_s.tif", small_plan(), [](int, int) { return 10; });
  double last = -1.0;
  const auto done = import_cover(folder / "ESA_WorldCover_10m_s.tif", folder / "tiles",
                                 ready_tables(), "", [&last](double part) {
                                   CHECK(part >= last);
                                   last = part;
                                   return part < 0.5;
                                 });
  REQUIRE(done);
  CHECK(done->stopped);
  CHECK(done->new_areas == 0);
  CHECK(CoverFolder(folder / "tiles").cells().empty());
  CHECK_FALSE(fs::exists(folder / "tiles/.import"));
}

TEST_CASE("a raster that is not land cover is refused with what to do") {
  const test::TemporaryFolder folder;
  const auto tables = ready_tables();
  const auto refused = [&](const std::string& name) {
    const auto done = import_cover(folder / name, folder / "tiles", tables, "", carry_on);
    REQUIRE_FALSE(done);
    CHECK_FALSE(done.error().remedy.empty());
    CHECK(done.error().where.find(name) != std::string::npos);
    return done.error().message();
  };
  CodesPlan plan = small_plan();
  plan.two_bytes = true;
  write_codes(folder / "heights.tif", plan, [](int, int) { return 100; });
  CHECK(refused("heights.tif").find("one byte") != std::string::npos);
  write_codes(folder / "coarse.tif",
              {.columns = 50, .rows = 50, .left = 7.0, .top = 46.0, .spacing = 0.01},
              [](int, int) { return 10; });
  CHECK(refused("coarse.tif").find("12 arc seconds") != std::string::npos);
  test::write_bytes(folder / "damaged.tif", std::vector<std::byte>(500, std::byte{0x49}));
  refused("damaged.tif");
  CHECK_FALSE(fs::exists(folder / "tiles"));
}

TEST_CASE("WorldCover's tile of Sao Tome has the classes read from it by hand") {
  const auto file = test::reference("landcover/ESA_WorldCover_10m_2021_v200_N00E006_Map.tif");
  if (!file) return;
  const test::TemporaryFolder folder;
  // The part with the island of Sao Tome, from 0.45 N 6.4 E; the whole file takes longer, not more.
  const fs::path part = folder / "ESA_WorldCover_10m_part.tif";
  cut_pixels(*file, part, {4'800, 30'600, 5'400, 5'400});
  const auto done = import_cover(part, folder / "tiles", ready_tables(), "", carry_on);
  REQUIRE(done);
  CHECK(done->table == "ESA WorldCover");
  CHECK(done->written == std::vector<terrain::TileCell>{{0, 6}});
  CHECK(done->unlisted_codes.empty());
  const CoverFolder cover(folder / "tiles");
  CHECK(cover.problems().empty());
  // Read from the TIFF by an own reader of its deflated blocks, without GDAL, and counted by hand:
  // the middle of an area of 3 arc seconds and how many of its 100 pixels have which code.
  struct ByHand {
    double latitude_deg, longitude_deg;
    CoverClass cover;
  };
  for (const ByHand& row : {
           ByHand{0.23375, 6.565417, CoverClass::trees},  // 10: 100
           {0.268750, 6.462083, CoverClass::water},       // 80: 100
           {0.388750, 6.672083, CoverClass::open},        // 10: 44, 30: 56
           {0.330417, 6.737083, CoverClass::urban},       // 50: 89, 10: 11
           {0.320417, 6.498750, CoverClass::water},       // 80: 66, 10: 34
           {0.171250, 6.506250, CoverClass::open},        // 60: 96, 10: 4
           {0.337917, 6.732083, CoverClass::urban},       // 50: 100, the capital
           {0.086250, 6.574583, CoverClass::open},        // 10: 7, 60: 48, 80: 41, 30: 4
           {0.041250, 6.518750, CoverClass::trees},       // 95: 97, 10: 3, mangroves
           {0.041250, 6.517917, CoverClass::trees},       // 95: 52, 10: 48
           {0.342083, 6.702083, CoverClass::open},        // 40: 56, 10: 15, 30: 29
           {0.271250, 6.477083, CoverClass::open},        // 80: 36, 30: 30, 90: 4, 60: 15, 10: 15
           {0.001250, 6.523750, CoverClass::urban},  // 60: 6, 30: 4, 10: 34, 80: 22, 50: 34: a tie
           {0.287917, 6.718750, CoverClass::urban},  // 10: 50, 50: 50: a tie
           {0.392083, 6.650417, CoverClass::trees},  // 30: 50, 10: 50: a tie
       }) {
    INFO(row.latitude_deg << ", " << row.longitude_deg);
    CHECK(landcover::class_at(cover, *Position::at_deg(row.latitude_deg, row.longitude_deg)) ==
          row.cover);
  }
  for (const terrain::TileCell cell : done->written) {
    CHECK(cover.tile(cell)->notices() == std::vector<std::string>{done->notice});
  }
}

TEST_CASE("a raster in Albers has the classes at the places of its pixels") {
  const auto file = test::reference("landcover/LCMAP_CU_001004_1999_V13_LCPRI.tif");
  if (!file) return;
  const test::TemporaryFolder folder;
  const std::vector<ClassTable> tables{lcmap_table()};
  const fs::path part = folder / "LCMAP_part.tif";
  cut_pixels(*file, part, {4'000, 4'000, 1'000, 1'000});
  const auto done = import_cover(part, folder / "tiles", tables, "", carry_on);
  REQUIRE(done);
  const CoverFolder cover(folder / "tiles");
  // Pixels amid 11 by 11 of the same code, read without GDAL, and placed by the formulas of Albers'
  // equal-area conic in Snyder, Map Projections: A Working Manual, (14-8) to (14-11) and (3-16).
  struct Placed {
    double latitude_deg, longitude_deg;
    CoverClass cover;
  };
  for (const Placed& row : {Placed{43.16743, -124.45780, CoverClass::water},
                            {43.07853, -124.44554, CoverClass::water},
                            {43.00993, -124.40166, CoverClass::trees},
                            {43.05646, -124.38461, CoverClass::trees},
                            {43.11326, -124.41340, CoverClass::urban},
                            {43.11488, -124.42882, CoverClass::urban},
                            {42.99987, -124.44036, CoverClass::open},
                            {43.02721, -124.38344, CoverClass::open},
                            {43.03383, -124.38779, CoverClass::open}}) {
    INFO(row.latitude_deg << ", " << row.longitude_deg);
    CHECK(landcover::class_at(cover, *Position::at_deg(row.latitude_deg, row.longitude_deg)) ==
          row.cover);
  }
}

}  // namespace mastwise::platform
