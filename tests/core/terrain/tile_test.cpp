#include "core/terrain/tile.hpp"

#include "core/terrain/tile_source.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace mastwise::terrain {
namespace {

Position tile_at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// Heights rise 2 m a sample to the east and 3 m a sample to the north: whole meters at each sample.
double tile_plane_m(double latitude_deg, double longitude_deg) {
  return 1000.0 + 3.0 * 1200.0 * (latitude_deg - 45.0) + 2.0 * 1200.0 * (longitude_deg - 7.0);
}

}  // namespace

TEST_CASE("a tile is named by its south-west corner") {
  // Naming of SRTM tiles: NASA SRTM documentation, SRTM_Topo.txt, section 2.1.
  CHECK(cell_name({44, -72}) == "N44W072");
  CHECK(cell_name({0, 10}) == "N00E010");
  CHECK(cell_name({-34, 151}) == "S34E151");
  CHECK(cell_name({-1, -1}) == "S01W001");
  CHECK(cell_named("N44W072.hgt") == TileCell{44, -72});
  CHECK(cell_named("n44w072.HGT") == TileCell{44, -72});
  CHECK(cell_named("S34E151.SRTMGL1.hgt.zip") == TileCell{-34, 151});
  CHECK(cell_named("N00W180") == TileCell{0, -180});
  for (int south = -90; south < 90; south += 17) {
    for (int west = -180; west < 180; west += 13) {
      CHECK(cell_named(cell_name({south, west})) == TileCell{south, west});
    }
  }
}

TEST_CASE("a name outside the globe is not a tile name") {
  for (const char* name :
       {"", "N44W07", "N44W0722.hgt", "X44W072.hgt", "N44X072.hgt", "N4aW072.hgt", "N90E000.hgt",
        "N00E180.hgt", "S91E000.hgt", "N00W181.hgt", "N44W072_1.hgt", "N-1W072.hgt"}) {
    INFO(name);
    CHECK_FALSE(cell_named(name));
  }
}

TEST_CASE("a position on a degree line belongs to the cell north and east of it") {
  CHECK(cell_of(tile_at(44.5, -71.5)) == TileCell{44, -72});
  CHECK(cell_of(tile_at(44.0, -72.0)) == TileCell{44, -72});
  CHECK(cell_of(tile_at(-0.1, -0.1)) == TileCell{-1, -1});
  CHECK(cell_of(tile_at(0.0, 0.0)) == TileCell{0, 0});
  CHECK(cell_of(tile_at(90.0, 0.0)) == TileCell{89, 0});
  CHECK(cell_of(tile_at(-90.0, 180.0)) == TileCell{-90, -180});
}

TEST_CASE("only the two sizes of an SRTM tile are accepted") {
  CHECK(Tile::side_of_size(2'884'802) == 1201);
  CHECK(Tile::side_of_size(25'934'402) == 3601);
  CHECK_FALSE(Tile::side_of_size(0));
  CHECK_FALSE(Tile::side_of_size(2'884'801));
  CHECK_FALSE(Tile::side_of_size(2'880'000));
  const std::vector<std::byte> cut_off(2'884'800);
  const auto tile = Tile::over({44, -72}, cut_off);
  REQUIRE_FALSE(tile);
  CHECK(tile.error().message() ==
        "N44W072: terrain tile of 2884800 bytes; a tile has 2884802 (3 arc seconds) or 25934402 "
        "(1 arc second); copy the tile again from its source");
}

TEST_CASE("samples are big-endian, signed, from the north-west corner") {
  auto bytes = test::made_tile_bytes({45, 7}, 1201, [](double, double) { return 0.0; });
  bytes[0] = std::byte{0x12};
  bytes[1] = std::byte{0x34};
  bytes[2] = std::byte{0xff};
  bytes[3] = std::byte{0xfe};
  bytes[2 * 1201] = std::byte{0x80};
  const auto tile = test::tile_of_bytes({45, 7}, bytes);
  CHECK(tile->sample(0, 0) == 0x1234);
  CHECK(tile->sample(0, 1) == -2);
  CHECK(tile->sample(1, 0) == kVoidSample);
  CHECK(tile->arc_seconds() == 3);
}

TEST_CASE("bilinear interpolation reproduces a plane, to all four edges") {
  for (const int side : {1201, 3601}) {
    if (side == 3601 && test::kSanitized) return;
    const auto height = [side](double latitude_deg, double longitude_deg) {
      return (side - 1) * 2.0 * (latitude_deg - 45.0) + (side - 1) * (longitude_deg - 7.0);
    };
    TileSet tiles;
    tiles.add(test::made_tile({45, 7}, side, height));
    for (const double north : {0.0, 0.1, 0.123456, 0.5, 0.99999, 1.0}) {
      for (const double east : {0.0, 0.2, 0.654321, 0.999999, 1.0}) {
        const auto found = ground_height_m(tiles, tile_at(45.0 + north, 7.0 + east));
        INFO(side << " " << north << " " << east);
        REQUIRE(found);
        CHECK(*found == Approx(height(45.0 + north, 7.0 + east)).margin(1e-8));
      }
    }
  }
}

TEST_CASE("a bilinear height is on the hyperbolic surface of its four samples") {
  // (1-u)(1-v) NW + u(1-v) NE + (1-u)v SW + uv SE with 0, 10, 20, 70 at u = 0.25, v = 0.5:
  // 0.125 * 10 + 0.375 * 20 + 0.125 * 70 = 17.5.
  auto bytes = test::made_tile_bytes({45, 7}, 1201, [](double, double) { return 0.0; });
  bytes[3] = std::byte{10};
  bytes[2 * 1201 + 1] = std::byte{20};
  bytes[2 * 1201 + 3] = std::byte{70};
  CHECK(test::tile_of_bytes({45, 7}, bytes)->height_m(0.25, 0.5) == 17.5);
}

TEST_CASE("a missing tile or a void gives no height, never sea level") {
  TileSet tiles;
  CHECK_FALSE(ground_height_m(tiles, tile_at(45.5, 7.5)));
  tiles.add(test::made_tile({45, 7}, 1201, [](double latitude_deg, double longitude_deg) {
    const bool hole =
        std::fabs(latitude_deg - 45.5) < 1e-6 && std::fabs(longitude_deg - 7.5) < 1e-6;
    return hole ? -32768.0 : tile_plane_m(latitude_deg, longitude_deg);
  }));
  const double spacing_deg = 1.0 / 1200.0;
  CHECK_FALSE(ground_height_m(tiles, tile_at(45.5, 7.5)));
  CHECK_FALSE(ground_height_m(tiles, tile_at(45.5 + 0.9 * spacing_deg, 7.5 - 0.9 * spacing_deg)));
  // If the void has zero weight, the known samples count.
  const auto tile = tiles.tile({45, 7});
  CHECK(std::isnan(tile->height_m(600.5, 600.0)));
  CHECK(tile->height_m(601.0, 600.5) ==
        Approx(tile_plane_m(45.5 - 0.5 * spacing_deg, 7.5 + spacing_deg)));
  CHECK(tile->height_m(599.0, 600.5) ==
        Approx(tile_plane_m(45.5 - 0.5 * spacing_deg, 7.5 - spacing_deg)));
}

TEST_CASE("a position on a degree line is in the tiles of both sides") {
  const auto flat = [](double height) { return [height](double, double) { return height; }; };
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, flat(100.0)));
  CHECK(ground_height_m(tiles, tile_at(46.0, 7.5)) == 100.0);
  CHECK(ground_height_m(tiles, tile_at(45.5, 8.0)) == 100.0);
  CHECK(ground_height_m(tiles, tile_at(46.0, 8.0)) == 100.0);
  CHECK(ground_height_m(tiles, tile_at(45.0, 7.0)) == 100.0);
  CHECK_FALSE(ground_height_m(tiles, tile_at(46.0000001, 7.5)));
  CHECK_FALSE(ground_height_m(tiles, tile_at(45.5, 6.9999999)));
}

TEST_CASE("heights work at the poles, the antimeridian and the equator") {
  const auto flat = [](double height) { return [height](double, double) { return height; }; };
  TileSet tiles;
  tiles.add(test::made_tile({89, 20}, 1201, flat(1.0)));
  tiles.add(test::made_tile({-90, 20}, 1201, flat(2.0)));
  tiles.add(test::made_tile({-17, 179}, 1201, flat(3.0)));
  tiles.add(test::made_tile({0, -1}, 1201, flat(4.0)));
  CHECK(ground_height_m(tiles, tile_at(90.0, 20.5)) == 1.0);
  CHECK(ground_height_m(tiles, tile_at(-90.0, 20.5)) == 2.0);
  CHECK(ground_height_m(tiles, tile_at(-16.5, 180.0)) == 3.0);
  CHECK(ground_height_m(tiles, tile_at(-16.5, -180.0)) == 3.0);
  CHECK_FALSE(ground_height_m(tiles, tile_at(-16.5, -179.9)));
  CHECK(ground_height_m(tiles, tile_at(0.0, 0.0)) == 4.0);
  CHECK(ground_height_m(tiles, tile_at(-0.0, -0.5)) == 4.0);
  CHECK_FALSE(ground_height_m(tiles, tile_at(0.0, 0.5)));
}

TEST_CASE("the reference tiles have their summit and 78 voids") {
  // 78 voids: README of the reference data.
  if (const auto path = test::reference("terrain/N00E010.hgt")) {
    const auto tile = test::read_tile(*path, {0, 10});
    int voids = 0;
    for (int row = 0; row < tile->side(); ++row) {
      for (int column = 0; column < tile->side(); ++column) {
        voids += tile->sample(row, column) == kVoidSample ? 1 : 0;
      }
    }
    CHECK(voids == 78);
  }
  if (const auto path = test::reference("terrain/N44W072.hgt")) {
    TileSet tiles;
    tiles.add(test::read_tile(*path, {44, -72}));
    // Mount Washington, 1,916.6 m (NGS datasheet PG2435, from memory) at 44.2706, -71.3033: SRTM
    // averages summits away by some tens of meters.
    const auto summit = ground_height_m(tiles, tile_at(44.2706, -71.3033));
    REQUIRE(summit);
    CHECK(*summit > 1880.0);
    CHECK(*summit < 1920.0);
  }
}

}  // namespace mastwise::terrain
