#include "core/terrain/haat.hpp"

#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"

#include <cmath>
#include <iostream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::terrain {
namespace {

struct StationRow {
  double latitude_deg, longitude_deg, amsl_m, haat_m;
};

double degrees_of(const std::string& ddmmss) {
  const double number = std::stod(ddmmss);
  const double degrees = std::floor(number / 10'000.0);
  const double minutes = std::floor(number / 100.0) - degrees * 100.0;
  return degrees + minutes / 60.0 + (number - degrees * 10'000.0 - minutes * 100.0) / 3600.0;
}

std::vector<StationRow> rows_of(const std::filesystem::path& table, const std::string& call) {
  std::vector<StationRow> rows;
  for (const std::string& line : test::read_lines(table)) {
    const auto fields = test::split(line, ',');
    if (fields.size() < 11 || fields[2] != call) continue;
    rows.push_back({degrees_of(fields[7]), -degrees_of(fields[8]), std::stod(fields[9]),
                    std::stod(fields[10])});
  }
  return rows;
}

}  // namespace

TEST_CASE("over flat ground the height above average terrain equals the height above ground") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, [](double, double) { return 240.0; }));
  const auto antenna = *Position::at_deg(45.5, 7.5);
  const Haat haat = height_above_average_terrain(tiles, antenna, 390.0);
  CHECK(haat.known_radials() == 8);
  REQUIRE(haat.haat_m);
  CHECK(*haat.haat_m == Approx(150.0));
  CHECK(haat.radials[2].bearing.degrees() == 90.0);
}

TEST_CASE("each radial is averaged from 3 to 16 km") {
  // Ground that rises 100 m a degree to the north: the mean over 3 to 16 km is the height at 9.5
  // km.
  TileSet tiles;
  tiles.add(test::made_tile(
      {45, 7}, 1201, [](double latitude_deg, double) { return 12'000.0 * (latitude_deg - 45.0); }));
  const Haat haat = height_above_average_terrain(tiles, *Position::at_deg(45.5, 7.5), 6'000.0);
  // A degree of latitude is 111,142 m at 45.5 degrees north on WGS84 (series of the NGA, TR8350.2).
  const double rise_m = 12'000.0 * 9'500.0 / 111'142.0;
  REQUIRE(haat.radials[0].average_ground_m);
  REQUIRE(haat.radials[4].average_ground_m);
  CHECK(*haat.radials[0].average_ground_m == Approx(6'000.0 + rise_m).margin(0.5));
  CHECK(*haat.radials[4].average_ground_m == Approx(6'000.0 - rise_m).margin(0.5));
  CHECK(*haat.radials[2].average_ground_m == Approx(6'000.0).margin(2.0));
}

TEST_CASE("a station on a mountain has the regulator's figure") {
  const auto tile_path = test::reference("terrain/N44W072.hgt");
  const auto table = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!tile_path || !table) return;
  TileSet tiles;
  tiles.add(test::read_tile(*tile_path, {44, -72}));

  const auto inside = rows_of(*table, "WLED-TV");
  REQUIRE(inside.size() == 1);
  const auto antenna = *Position::at_deg(inside[0].latitude_deg, inside[0].longitude_deg);
  const auto ours_m = haat_m(antenna, inside[0].amsl_m, tiles);
  REQUIRE(ours_m);
  std::cout << "WLED-TV above average terrain: " << *ours_m << " m, table " << inside[0].haat_m
            << " m\n";
  // The regulator used another terrain file: some meters of difference are the data's.
  CHECK(std::fabs(*ours_m - inside[0].haat_m) < 10.0);

  // WVTB is 8 km from the tile's western edge: three radials leave the tile.
  const auto beside = rows_of(*table, "WVTB");
  REQUIRE(beside.size() == 1);
  const Haat partly = height_above_average_terrain(
      tiles, *Position::at_deg(beside[0].latitude_deg, beside[0].longitude_deg), beside[0].amsl_m);
  CHECK(partly.known_radials() == 5);
  CHECK_FALSE(partly.haat_m);
  for (const std::size_t westward : {5u, 6u, 7u}) {
    CHECK_FALSE(partly.radials[westward].average_ground_m);
  }
}

}  // namespace mastwise::terrain
