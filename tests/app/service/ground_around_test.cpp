#include "app/service/ground_around.hpp"

#include "tests/support/assets.hpp"
#include "tests/support/temporary_folder.hpp"

#include <cmath>
#include <fstream>
#include <map>

#include <catch2/catch.hpp>

using namespace mastwise;
using terrain::TileCell;

namespace {

Position at(double lat_deg, double lon_deg) {
  return *Position::at_deg(lat_deg, lon_deg);
}

std::map<std::string, SquareHeld> held(const GroundAround& around) {
  std::map<std::string, SquareHeld> squares;
  for (const GroundSquare& square : around.squares) squares[square.cell] = square.held;
  return squares;
}

}  // namespace

TEST_CASE("squares around the way are held or missing, and lie where they are on the earth") {
  const std::set<TileCell> tiles{{42, -119}, {42, -118}, {43, -119}};
  const auto around =
      ground_around({at(42.5, -118.5), at(43.6, -118.4)}, tiles, {{42, -119}}, nullptr);
  REQUIRE(around);
  const auto squares = held(*around);
  CHECK(squares.at("N42W119") == SquareHeld::Held);
  CHECK(squares.at("N43W119") == SquareHeld::Held);
  CHECK(squares.at("N44W119") == SquareHeld::Missing);
  CHECK(squares.at("N41W120") == SquareHeld::Missing);
  for (const GroundSquare& square : around->squares) {
    CHECK(square.land_cover == (square.cell == "N42W119"));
    if (square.cell != "N42W119") continue;
    // Corners of a degree: 111.05 km of the meridian at 42.5 N [WGS84], and the stop in the middle.
    const double side_m = square.corners[3].north_m - square.corners[0].north_m;
    CHECK(side_m == Approx(111.05e3).epsilon(0.002));
    CHECK(around->way[0].north_m - square.corners[0].north_m == Approx(side_m / 2.0).epsilon(0.01));
    CHECK(square.corners[1].east_m > square.corners[0].east_m);
  }
  REQUIRE(around->way.size() == 2);
  // Every piece of the outline is that far from the nearest part of the way.
  const auto& way = around->way;
  for (const GroundLine& line : around->reach) {
    double nearest_m = 1e12;
    for (int i = 0; i <= 200; ++i) {
      const double part = i / 200.0;
      const double east_m = way[0].east_m + part * (way[1].east_m - way[0].east_m);
      const double north_m = way[0].north_m + part * (way[1].north_m - way[0].north_m);
      nearest_m =
          std::min(nearest_m, std::hypot(line[0].east_m - east_m, line[0].north_m - north_m));
    }
    CHECK(nearest_m == Approx(kNearGround_m).epsilon(0.003));
  }
  CHECK_FALSE(ground_around({}, tiles, {}, nullptr));
}

// Off Brittany: by any atlas, 48 N 7 W is open sea, and Brest (48.4 N, 4.5 W) is land.
TEST_CASE("a square that lies wholly at sea is not missing, unless a tile contradicts the coasts") {
  const map::Borders& borders = test::borders();
  const auto around = ground_around({at(48.38, -4.35)}, {}, {}, &borders);
  REQUIRE(around);
  const auto squares = held(*around);
  CHECK(squares.at("N47W006") == SquareHeld::Sea);
  CHECK(squares.at("N48W005") == SquareHeld::Missing);
  CHECK(squares.at("N48W004") == SquareHeld::Missing);
  // With the stop off the land by the coasts, the inland is at sea: a tile shows that it is not.
  const auto at_sea = ground_around({at(48.38, -5.9)}, {{48, -4}}, {}, &borders);
  REQUIRE(at_sea);
  for (const auto& [cell, state] : held(*at_sea)) CHECK(state != SquareHeld::Sea);
}

TEST_CASE("the disk's use counts files in all folders, and what is missing as nothing") {
  const test::TemporaryFolder folder;
  std::filesystem::create_directories(folder / "terrain" / "more");
  std::ofstream(folder / "terrain" / "more" / "a.hgt") << std::string(1234, 'x');
  std::ofstream(folder / "terrain" / "b.hgt") << std::string(66, 'x');
  std::ofstream(folder / "catalog") << std::string(500, 'x');
  const DiskUse use = disk_use({(folder / "terrain").string(), (folder / "none").string(), ""},
                               (folder / "catalog").string());
  CHECK(use.ground_bytes == 1300);
  CHECK(use.station_bytes == 500);
  REQUIRE(use.free_bytes);
  CHECK(*use.free_bytes > 0);
}
