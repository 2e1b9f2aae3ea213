#include "core/map/hillshade.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using map::Relief;
using terrain::Tile;

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180.0;

Position relief_at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

map::Projection plane_around(Position center) {
  auto plane = map::Projection::around(center);
  REQUIRE(plane);
  return *std::move(plane);
}

terrain::TileSet ground(const test::HeightAt& height_m) {
  terrain::TileSet tiles;
  tiles.add(test::made_tile({45, 7}, Tile::kSide3ArcSeconds, height_m));
  return tiles;
}

std::uint8_t middle(const std::vector<std::uint8_t>& cells, const map::ReliefGrid& grid) {
  return cells[static_cast<std::size_t>(grid.rows / 2 * grid.columns + grid.columns / 2)];
}

// The brightness of a matte plane by the textbook's angles: cos(zenith) cos(slope) + sin(zenith)
// sin(slope) cos(azimuth - aspect), aspect being the bearing downhill [Burrough and McDonnell,
// Principles of GIS, 1998, chapter 8, from memory].
double textbook(double slope_deg, double aspect_deg) {
  return std::cos(45.0 * kDegree) * std::cos(slope_deg * kDegree) +
         std::sin(45.0 * kDegree) * std::sin(slope_deg * kDegree) *
             std::cos((315.0 - aspect_deg) * kDegree);
}

}  // namespace

TEST_CASE("level ground has the brightness of the light's elevation", "[map]") {
  const auto tiles = ground([](double, double) { return 320.0; });
  const map::ReliefGrid grid{.columns = 40, .rows = 30, .meters_per_cell = 200.0};
  const auto relief = map::shade_relief(tiles, plane_around(relief_at(45.5, 7.5)), grid);
  REQUIRE(relief);
  REQUIRE(relief->shade.size() == 1'200);
  for (const std::uint8_t shade : relief->shade)
    CHECK(shade == std::lround(1 + 254 * textbook(0, 0)));
  for (const std::uint8_t band : relief->band) CHECK(band == 5);  // 300 to 500 m
}

TEST_CASE("a slope has the brightness of a matte plane", "[map]") {
  const map::ReliefGrid grid{.columns = 9, .rows = 9, .meters_per_cell = 500.0};
  const Position center = relief_at(45.5, 7.5);
  // Meters of a degree at 45.5 N by the geodesic.
  const double north_m = path_between(relief_at(45.0, 7.5), relief_at(46.0, 7.5)).distance_m;
  const double east_m =
      2.0 * path_between(relief_at(45.5, 7.25), relief_at(45.5, 7.5)).distance_m * 2.0;
  for (const double slope_deg : {25.0, 10.0, 2.0}) {
    if (slope_deg < 25.0 && test::kSanitized) return;
    for (const double aspect_deg : {0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0}) {
      const auto tiles = ground([&](double latitude_deg, double longitude_deg) {
        const double downhill_m = (latitude_deg - 45.5) * north_m * std::cos(aspect_deg * kDegree) +
                                  (longitude_deg - 7.5) * east_m * std::sin(aspect_deg * kDegree);
        // A step of the tile's whole meters is a hundredth of a degree over 5 km.
        return 15'000.0 - downhill_m * std::tan(slope_deg * kDegree) * 0.5;
      });
      // Heights count twice, so that 25 degrees fit into a tile's 16 bits.
      const auto relief = map::shade_relief(
          tiles, plane_around(center), grid,
          {.from = Bearing<True>::degrees(315.0), .height_deg = 45.0, .vertical_scale = 2.0});
      REQUIRE(relief);
      INFO(slope_deg << " " << aspect_deg);
      const double wanted = 1 + 254 * std::max(0.0, textbook(slope_deg, aspect_deg));
      CHECK(std::abs(middle(relief->shade, grid) - wanted) < 2.0);
    }
  }
}

TEST_CASE("unknown ground is never shaded", "[map]") {
  terrain::TileSet none;
  const map::ReliefGrid grid{.columns = 21, .rows = 21, .meters_per_cell = 300.0};
  const auto nowhere = map::shade_relief(none, plane_around(relief_at(45.5, 7.5)), grid);
  REQUIRE(nowhere);
  for (const std::uint8_t shade : nowhere->shade) CHECK(shade == Relief::kUnknown);
  for (const std::uint8_t band : nowhere->band) CHECK(band == Relief::kUnknown);

  // North of 45.5 degrees the tile has voids; the cells beside them have a height, but no slope.
  const auto tiles = ground([](double latitude_deg, double) {
    return latitude_deg > 45.5 ? static_cast<double>(terrain::kVoidSample) : 20.0;
  });
  const auto relief = map::shade_relief(tiles, plane_around(relief_at(45.5, 7.5)), grid);
  REQUIRE(relief);
  int known_without_slope = 0;
  for (int row = 0; row < grid.rows; ++row) {
    const auto cell = static_cast<std::size_t>(row * grid.columns + 10);
    if (row < 10) CHECK(relief->band[cell] == Relief::kUnknown);
    if (row > 11) CHECK(relief->shade[cell] != Relief::kUnknown);
    if (relief->band[cell] != Relief::kUnknown && relief->shade[cell] == Relief::kUnknown) {
      ++known_without_slope;
    }
    if (relief->band[cell] == Relief::kUnknown) CHECK(relief->shade[cell] == Relief::kUnknown);
  }
  CHECK(known_without_slope == 1);
}

TEST_CASE("a cell shows the ground at its place, also across tiles", "[map]") {
  // Height by longitude in bands of the relief: the band shows where the cell was read.
  terrain::TileSet tiles;
  const auto height_m = [](double, double longitude_deg) {
    return longitude_deg * 1000.0 - 6000.0;
  };
  for (const int west : {6, 7}) {
    tiles.add(test::made_tile({45, west}, Tile::kSide3ArcSeconds, height_m));
  }
  const map::ReliefGrid grid{.columns = 200, .rows = 100, .meters_per_cell = 500.0};
  const auto plane = plane_around(relief_at(45.5, 7.0));
  const auto relief = map::shade_relief(tiles, plane, grid);
  REQUIRE(relief);
  for (int row = 0; row < grid.rows; row += 7) {
    for (int column = 0; column < grid.columns; column += 3) {
      const auto place = plane.to_earth(
          {.east_m = (column + 0.5 - 100.0) * 500.0, .north_m = (50.0 - row - 0.5) * 500.0});
      REQUIRE(place);
      const double height = height_m(place->latitude_deg(), place->longitude_deg());
      const auto above =
          std::upper_bound(Relief::kBandsFromM.begin(), Relief::kBandsFromM.end(), height);
      // A hundredth of a cell is 5 m of ground, 0.07 m of height; the tile rounds to 0.5.
      const bool beside_a_bound =
          std::any_of(Relief::kBandsFromM.begin(), Relief::kBandsFromM.end(),
                      [&](double bound) { return std::fabs(bound - height) < 0.6; });
      const auto cell = static_cast<std::size_t>(row * grid.columns + column);
      if (!beside_a_bound) {
        CHECK(relief->band[cell] == 1 + (above - Relief::kBandsFromM.begin()));
      }
      CHECK(relief->shade[cell] != Relief::kUnknown);
    }
  }
}

TEST_CASE("a relief beyond its limits is refused", "[map]") {
  const terrain::TileSet none;
  const auto plane = plane_around(relief_at(45.5, 7.5));
  CHECK_FALSE(map::shade_relief(none, plane, {.columns = 0, .rows = 5, .meters_per_cell = 90.0}));
  CHECK_FALSE(
      map::shade_relief(none, plane, {.columns = 5, .rows = 2049, .meters_per_cell = 90.0}));
  CHECK_FALSE(
      map::shade_relief(none, plane, {.columns = 5, .rows = 5, .meters_per_cell = std::nan("")}));
  CHECK_FALSE(map::shade_relief(none, plane, {.columns = 5, .rows = 5, .meters_per_cell = 90.0},
                                {.from = {}, .height_deg = 91.0, .vertical_scale = 1.0}));
}
