#include "app/service/packs.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/tablet.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

// Packs through finger events.
using namespace mastwise;
using namespace mastwise::test;
namespace fs = std::filesystem;

namespace {

// A pack of one square and the invented stations, made on another tablet, on the stick.
void put_pack(const Tablet& tablet) {
  const TemporaryFolder maker;
  const auto bytes = made_tile_bytes({42, -119}, 1201, [](double, double) { return 1300.0; });
  std::ofstream(maker.file("N42W119.hgt"), std::ios::binary)
      .write(reinterpret_cast<const char*>(bytes.data()),
             static_cast<std::streamsize>(bytes.size()));
  fill_catalog(maker.file("catalog"));
  fs::create_directories(tablet.path() / "stick");
  REQUIRE(packs::make({.name = "Lakes",
                       .made = "2026-07-01",
                       .ground = packs::around(*Position::at_deg(42.5, -118.5), 200'000.0),
                       .folders = {maker.path()},
                       .catalog = maker.file("catalog"),
                       .origins = {{pack::PartKind::terrain, {"made heights", "2026", "free"}}}},
                      tablet.path() / "stick/lakes.mwpack"));
}

}  // namespace

TEST_CASE("a person picks a pack on a stick, sees what it holds, and takes it in") {
  const Tablet tablet;
  put_pack(tablet);
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "lakes.mwpack");
  REQUIRE(stage.model().data.look->pack);
  CHECK(stage.shows("Lakes"));
  CHECK(stage.shows_within("1 square,"));
  CHECK(stage.shows_within("Source: made heights, 2026"));
  CHECK(stage.shows_within("License: free"));
  CHECK(stage.shows_within("License: not told"));
  CHECK(stage.model().data.look->map->squares.size() == 1);
  REQUIRE(stage.model().data.found.ready);
  stage.tap("take in");
  REQUIRE(report_of(stage).pack);
  CHECK(report_of(stage).pack->tiles_new == 1);
  CHECK(report_of(stage).pack->stations_added > 5);
  CHECK(stage.shows("New squares"));
  CHECK(fs::exists(tablet.path() / "terrain/N42W119.hgt"));
  stage.tap("more data");
  stage.tap("places back");
  CHECK(stage.model().data.answer->ground.terrain_cells == 1);
  REQUIRE(stage.model().data.answer->stations.size() == 1);
  CHECK(stage.model().data.answer->stations[0].source.name == "INVENTED (Lakes)");
}

TEST_CASE("a damaged pack says so on the screen and cannot be taken in") {
  const Tablet tablet;
  put_pack(tablet);
  fs::resize_file(tablet.path() / "stick/lakes.mwpack", 5'000);
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "lakes.mwpack");
  CHECK_FALSE(stage.model().data.found.ready);
  CHECK(stage.shows_within("this pack cannot be read"));
}
