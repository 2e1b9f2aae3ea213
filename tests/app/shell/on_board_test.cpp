#include "app/words/on_board.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/tablet.hpp"

#include <catch2/catch.hpp>

// What the stations on board are, where none of them is in reach or none names a network.
using namespace mastwise;
using test::Stage;

TEST_CASE("a forgotten minus sign leaves the stations on board, with how far the nearest is") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path());
  test::stand_at(stage, 42.5, 118.5);
  const Model& model = stage.model();
  REQUIRE(model.stations);
  CHECK(model.stations->rows.empty());
  REQUIRE(model.findings.on_board);
  const StationsOnBoard& on_board = *model.findings.on_board;
  CHECK(on_board.count == 32);
  REQUIRE(on_board.nearest_m);
  // The nearest of all, one by one.
  const auto practice = service::load_practice();
  REQUIRE(practice);
  PathBetween nearest =
      path_between(*Position::at_deg(42.5, 118.5), practice->stations.front().position);
  for (const Station& station : practice->stations) {
    const PathBetween path = path_between(*Position::at_deg(42.5, 118.5), station.position);
    if (path.distance_m < nearest.distance_m) nearest = path;
  }
  CHECK(*on_board.nearest_m == Approx(nearest.distance_m).margin(1.0));
  CHECK((on_board.nearest_bearing - nearest.bearing).size_deg() < 0.01);
  stage.tap("place Stations");
  CHECK(stage.shows_within("The nearest station is 5"));
  CHECK(stage.shows_within("32 stations are on board"));

  test::stand_at(stage, 42.5, -118.5);
  REQUIRE(model.findings.on_board);
  CHECK(model.findings.on_board->count == 32);
  CHECK_FALSE(model.findings.on_board->nearest_m);
  CHECK(model.findings.on_board->networks_named);
}

TEST_CASE("a table without networks is known to name none") {
  const test::Tablet tablet;
  tablet.table("own.csv",
               "call_sign,raster,rf_channel,latitude_deg,longitude_deg,erp_kw,haat_m\n"
               "QAAA,ATSC,23,44.5,-100.4,100,200\n");
  Stage stage(test::kTablet, tablet.folder());
  test::pick(stage, tablet, "own.csv");
  stage.tap("take in");
  stage.tap("end practice");
  test::stand_at(stage, 44.5, -100.3);
  stage.settle();
  REQUIRE(stage.model().findings.on_board);
  CHECK(stage.model().findings.on_board->count == 1);
  CHECK_FALSE(stage.model().findings.on_board->networks_named);
  // Ahead, which compares networks, says so, and what brings names.
  stage.tap("close sheet");
  stage.tap("place Ahead");
  stage.set(act::PlaceTyped{*Position::at_deg(44.6, -100.5)});
  stage.settle();
  CHECK(stage.shows_within("name no networks"));
}

TEST_CASE("counts are grouped by thousands") {
  CHECK(words::grouped(0) == "0");
  CHECK(words::grouped(999) == "999");
  CHECK(words::grouped(2'074) == "2,074");
  CHECK(words::grouped(1'234'567) == "1,234,567");
}
