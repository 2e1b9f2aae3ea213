#include "core/landcover/cover_source.hpp"
#include "platform/cover_folder.hpp"
#include "tests/support/made_raster.hpp"
#include "tests/support/tablet.hpp"

#include <filesystem>

#include <catch2/catch.hpp>

// Imports of rasters through finger events.
using namespace mastwise;
using namespace mastwise::test;

TEST_CASE("a person picks a land cover raster, says whose it is, and its tiles are on board") {
  const Tablet tablet;
  std::filesystem::create_directories(tablet.path() / "stick");
  // Codes that WorldCover and Copernicus share: grass and water.
  write_codes(tablet.path() / "stick/cover.tif",
              {.columns = 300, .rows = 300, .left = -71.9, .top = 44.6, .spacing = 1.0 / 3600.0},
              [](int column, int) { return column < 150 ? 30 : 80; });
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "cover.tif");
  CHECK(reading_of(stage, "classes").empty());
  CHECK_FALSE(stage.model().data.found.ready);
  CHECK(stage.shows_within("Choose whose classes these are"));
  while (reading_of(stage, "classes") != "ESA WorldCover") stage.tap("reading classes");
  REQUIRE(stage.model().data.found.ready);
  stage.tap("take in");
  REQUIRE(report_of(stage).ground);
  CHECK(report_of(stage).ground->source == "ESA WorldCover");
  CHECK(report_of(stage).ground->cells == std::vector<std::string>{"N44W072"});
  CHECK(report_of(stage).ground->filled == 100 * 100);
  CHECK(stage.shows_within("N44W072"));
  CHECK(stage.shows_within("(c) ESA WorldCover project"));
  const platform::CoverFolder cover(tablet.path() / "landcover");
  CHECK(landcover::class_at(cover, *Position::at_deg(44.55, -71.89)) ==
        landcover::CoverClass::open);
  CHECK(landcover::class_at(cover, *Position::at_deg(44.55, -71.83)) ==
        landcover::CoverClass::water);

  stage.tap("more data");
  stage.tap("places back");
  CHECK(stage.model().data.answer->ground.cover_cells == 1);
  CHECK(stage.shows_within("1 of land cover"));
  CHECK(stage.shows_within("(c) ESA WorldCover project"));
}

TEST_CASE("a raster of other codes is refused on the screen, whichever table is chosen") {
  const Tablet tablet;
  std::filesystem::create_directories(tablet.path() / "stick");
  write_codes(tablet.path() / "stick/cover.tif",
              {.columns = 300, .rows = 300, .left = -71.9, .top = 44.6, .spacing = 1.0 / 3600.0},
              [](int column, int) { return 1 + column % 8; });
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "cover.tif");
  for (int table = 0; table < 3; ++table) {
    stage.tap("reading classes");
    INFO(reading_of(stage, "classes"));
    CHECK_FALSE(stage.model().data.found.ready);
    CHECK(stage.model().data.look->trouble.find("are not those of " +
                                                reading_of(stage, "classes")) != std::string::npos);
    CHECK(stage.shows_within("not those of"));
  }
}
