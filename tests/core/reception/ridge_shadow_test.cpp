#include "core/reception/ridge_shadow.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/obstacles.hpp"
#include "core/terrain/profile.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using reception::RidgeShadow;
using reception::Tower;

namespace {

constexpr double kRigAntenna_m = 4.0;
constexpr double kFrequency_mhz = 545.0;

std::uint8_t cell_at(const RidgeShadow& shadow, double east_m, double north_m) {
  const int column =
      static_cast<int>(std::floor(east_m / shadow.meters_per_cell)) + shadow.side / 2;
  const int row =
      shadow.side / 2 - 1 - static_cast<int>(std::floor(north_m / shadow.meters_per_cell));
  return shadow.cells[static_cast<std::size_t>(row * shadow.side + column)];
}

// The worst single edge of a profile from the tower to the place, in dB; NaN if ground is unknown.
double along_profile_db(const terrain::TileSource& tiles, const Tower& tower,
                        const Position& place) {
  terrain::PathProfile profile;
  terrain::cut_profile(tiles, tower.position, place, profile, terrain::ProfileDetail::k90m);
  if (!profile.complete()) return std::nan("");
  const std::size_t last = profile.heights_m.size() - 1;
  const double end_m = profile.heights_m[last] + kRigAntenna_m;
  double worst_db = 0.0;
  for (std::size_t i = 1; i < last; ++i) {
    const double near_m = static_cast<double>(i) * profile.spacing_m;
    const double far_m = static_cast<double>(last - i) * profile.spacing_m;
    const double line_m =
        tower.antenna_amsl_m + (end_m - tower.antenna_amsl_m) * near_m / (near_m + far_m);
    const double above_m = profile.heights_m[i] + reception::bulge_m(near_m, far_m) - line_m;
    worst_db =
        std::max(worst_db, reception::edge_loss_db(above_m, near_m, far_m, tower.frequency_mhz));
  }
  return worst_db;
}

// Every seventh cell against a separate profile to its middle.
void agrees(const terrain::TileSource& tiles, Position stop, const Tower& tower) {
  constexpr int kSide = 256;
  constexpr double kCell_m = 250.0;
  const auto plane = map::Projection::around(stop);
  REQUIRE(plane);
  const auto shadow = reception::ridge_shadow(tiles, *plane, tower, kRigAntenna_m, kSide, kCell_m);
  REQUIRE(shadow);
  int compared = 0, same = 0, behind = 0, close = 0;
  for (int row = 3; row < kSide; row += 7) {
    for (int column = 2; column < kSide; column += 7) {
      const map::PlanePoint middle{(column + 0.5 - kSide / 2.0) * kCell_m,
                                   (kSide / 2.0 - row - 0.5) * kCell_m};
      const double profile_db = along_profile_db(tiles, tower, *plane->to_earth(middle));
      const std::uint8_t cell = shadow->cells[static_cast<std::size_t>(row * kSide + column)];
      if (std::isnan(profile_db) || cell == RidgeShadow::kUnknown) continue;
      ++compared;
      const bool ridge = profile_db >= RidgeShadow::kRidge_db;
      same += ridge == (cell - 1.0 >= RidgeShadow::kRidge_db) ? 1 : 0;
      behind += ridge ? 1 : 0;
      close += std::fabs(std::max(profile_db, 6.0) - std::max(cell - 0.5, 6.0)) <= 3.0 ? 1 : 0;
    }
  }
  INFO(compared << " compared, " << behind << " behind a ridge, " << same << " alike, " << close
                << " within 3 dB");
  REQUIRE(compared > 1'000);
  CHECK(behind > compared / 20);
  CHECK(behind < compared * 19 / 20);
  CHECK(same >= 0.97 * compared);
  CHECK(close >= 0.95 * compared);
}

}  // namespace

// A wall of 300 m across the plain, 10 km from the tower. At 5 and 20 km behind it the loss is
// worked by hand from Recommendation ITU-R P.526 section 4.1, (26) v = h sqrt(2 (d1 + d2) /
// (lambda d1 d2)) and (31) J(v) = 6.9 + 20 log(sqrt((v - 0.1)^2 + 1) + v - 0.1).
TEST_CASE("a made ridge costs what the knife edge of P.526 costs") {
  const Position tower_at = *Position::at_deg(45.5, 7.2);
  const Position wall_at = destination(tower_at, Bearing<True>::degrees(90.0), 10e3);
  terrain::TileSet tiles;
  tiles.add(test::made_tile({45, 7}, terrain::Tile::kSide3ArcSeconds, [&](double, double east) {
    return std::fabs(east - wall_at.longitude_deg()) < 0.0006 ? 300.0 : 100.0;
  }));
  const Tower tower{tower_at, 200.0, kFrequency_mhz};
  const auto plane = map::Projection::around(tower_at);
  REQUIRE(plane);
  const auto shadow = reception::ridge_shadow(tiles, *plane, tower, kRigAntenna_m, 400, 200.0);
  REQUIRE(shadow);
  for (const double behind_m : {5e3, 20e3}) {
    const double wave_m = 299.792458 / kFrequency_mhz;
    const double whole_m = 10e3 + behind_m;
    // Height over the line, with the bulge of an earth of 4/3 x 6371 km.
    const double line_m = 200.0 + (104.0 - 200.0) * 10e3 / whole_m;
    const double h_m = 300.0 + 10e3 * behind_m / (2.0 * 4.0 / 3.0 * 6'371e3) - line_m;
    const double v = h_m * std::sqrt(2.0 * whole_m / (wave_m * 10e3 * behind_m));
    const double j_db = 6.9 + 20.0 * std::log10(std::sqrt((v - 0.1) * (v - 0.1) + 1.0) + v - 0.1);
    const double found_db = cell_at(*shadow, whole_m, 50.0) - 1.0;
    INFO("behind " << behind_m << " m: " << j_db << " dB");
    // Whole decibels rounded down; the wall's top is a point of 90 m, its place off by as much.
    CHECK(found_db <= j_db + 0.2);
    CHECK(found_db > j_db - 1.3);
  }
  // Before the wall, and on the other side of the tower, nothing stands in the way.
  CHECK(cell_at(*shadow, 5e3, 50.0) == 1);
  CHECK(cell_at(*shadow, -10e3, 50.0) == 1);
}

// 300 m over smooth ground and 4 m: the horizon is at 4.12 (sqrt 300 + sqrt 4) = 79.6 km. On it
// the edge touches the line and costs 6.0 dB [Recommendation ITU-R P.526, (31): J(0) = 6.0].
TEST_CASE("the curve of the earth alone becomes a ridge beyond the radio horizon") {
  terrain::TileSet tiles;
  for (const int west : {7, 8}) {
    tiles.add(test::made_tile({45, west}, terrain::Tile::kSide3ArcSeconds,
                              [](double, double) { return 0.0; }));
  }
  const Tower tower{*Position::at_deg(45.5, 7.1), 300.0, kFrequency_mhz};
  const auto plane = map::Projection::around(tower.position);
  const auto shadow = reception::ridge_shadow(tiles, *plane, tower, kRigAntenna_m, 600, 500.0);
  REQUIRE(shadow);
  CHECK(cell_at(*shadow, 60e3, 0.0) - 1.0 < 6.0);
  CHECK(cell_at(*shadow, 76e3, 0.0) - 1.0 < RidgeShadow::kRidge_db);
  CHECK(cell_at(*shadow, 82e3, 0.0) - 1.0 >= 6.0);
  CHECK(cell_at(*shadow, 110e3, 0.0) - 1.0 >= RidgeShadow::kRidge_db);
}

TEST_CASE("ground behind unknown ground is unknown unless a known ridge is in the way") {
  const Position tower_at = *Position::at_deg(45.5, 7.2);
  const auto wall_deg = destination(tower_at, Bearing<True>::degrees(90.0), 10e3).longitude_deg();
  const auto shadow_with = [&](double wall_m) {
    terrain::TileSet tiles;
    tiles.add(test::made_tile({45, 7}, terrain::Tile::kSide3ArcSeconds, [&](double, double east) {
      if (east > wall_deg + 0.02 && east < wall_deg + 0.04) return -32768.0;
      return std::fabs(east - wall_deg) < 0.0006 ? wall_m : 100.0;
    }));
    const auto plane = map::Projection::around(tower_at);
    const Tower tower{tower_at, 200.0, kFrequency_mhz};
    return *reception::ridge_shadow(tiles, *plane, tower, kRigAntenna_m, 400, 200.0);
  };
  const RidgeShadow open = shadow_with(100.0), behind = shadow_with(400.0);
  CHECK(cell_at(open, 10.5e3, 50.0) != RidgeShadow::kUnknown);
  CHECK(cell_at(open, 12e3, 50.0) == RidgeShadow::kUnknown);
  CHECK(cell_at(open, 20e3, 50.0) == RidgeShadow::kUnknown);
  CHECK(cell_at(behind, 12e3, 50.0) == RidgeShadow::kUnknown);  // the ground itself
  CHECK(cell_at(behind, 20e3, 50.0) - 1.0 >= RidgeShadow::kRidge_db);
}

TEST_CASE("a ridge's shadow agrees with profiles to single places") {
  SECTION("over invented hills") {
    const Position stop = destination(test::stop_position(), Bearing<True>(), 40e3);
    const Tower tower{test::north_of_stop(65e3), 430.0, kFrequency_mhz};
    agrees(test::country(2, test::hills()), stop, tower);
  }
  // The station WLED-TV on RF 23 and the place where a receiver's log was recorded: reference data,
  // README.
  SECTION("over real mountains") {
    const auto tile_path = test::reference("terrain/N44W072.hgt");
    if (!tile_path) return;
    terrain::TileSet tiles;
    tiles.add(test::read_tile(*tile_path, {44, -72}));
    const Tower tower{*Position::at_deg(44.352778, -71.736944), 744.2, 527.0};
    agrees(tiles, *Position::at_deg(44.435217, -71.675993), tower);
  }
}

TEST_CASE("a grid out of range and a tower off the map are errors") {
  const terrain::TileSet tiles;
  const Position stop = *Position::at_deg(45.5, 7.2);
  const auto plane = map::Projection::around(stop);
  const Tower near{stop, 100.0, kFrequency_mhz};
  CHECK_FALSE(reception::ridge_shadow(tiles, *plane, near, kRigAntenna_m, 0, 100.0));
  CHECK_FALSE(reception::ridge_shadow(tiles, *plane, near, kRigAntenna_m, 10, 1.0));
  CHECK_FALSE(reception::ridge_shadow(tiles, *plane, near, kRigAntenna_m, 10, std::nan("")));
  const Tower beyond{*Position::at_deg(-45.5, -172.8), 100.0, kFrequency_mhz};
  CHECK_FALSE(reception::ridge_shadow(tiles, *plane, beyond, kRigAntenna_m, 10, 100.0));
}
