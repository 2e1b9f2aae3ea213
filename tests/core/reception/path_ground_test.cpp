#include "core/reception/path_ground.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/calibration.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/assets.hpp"
#include "tests/support/made_cover.hpp"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <limits>
#include <optional>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

constexpr double kNoHeight = std::numeric_limits<double>::quiet_NaN();

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// New Haven and Long Island, with the Sound between.
const Position kNewHaven = at(41.35, -72.92);
const Position kLongIsland = at(40.90, -72.66);

Outlook outlook_of(const Land& land, const Station& station, Position stop) {
  Receiver receiver = test::roof_antenna();
  receiver.position = stop;
  Survey survey(receiver, {station}, land);
  Scratch scratch;
  survey.measure(0, 1, scratch);
  return *survey.outlook(0);
}

}  // namespace

TEST_CASE("unknown points in the sea have its height, others stay unknown") {
  terrain::PathProfile profile;
  profile.distance_m = 900.0;
  profile.spacing_m = 100.0;
  profile.heights_m = {5.0, kNoHeight, kNoHeight, kNoHeight, kNoHeight,
                       7.0, 8.0,       kNoHeight, 9.0,       10.0};
  profile.gaps = {{.first_point = 1, .points = 4}, {.first_point = 7, .points = 1}};
  // From the last point: 550 to 750 m are points 3 and 2 (600 and 700 m).
  const std::vector<map::SeaStretch> sea{{550.0, 750.0}};
  lay_sea(sea, true, profile);
  CHECK(profile.heights_m[2] == 0.0);
  CHECK(profile.heights_m[3] == 0.0);
  CHECK(std::isnan(profile.heights_m[1]));
  CHECK(std::isnan(profile.heights_m[4]));
  CHECK(std::isnan(profile.heights_m[7]));
  const std::vector<terrain::TerrainGap> left{{.first_point = 1, .points = 1},
                                              {.first_point = 4, .points = 1},
                                              {.first_point = 7, .points = 1}};
  CHECK(profile.gaps == left);
}

TEST_CASE("a path has its zones and its clutter") {
  const auto shore = map::Shore::around(test::borders(), kNewHaven, 100e3);
  REQUIRE(shore);
  const auto path = path_between(kNewHaven, kLongIsland);
  GroundCover cover{.clutter_m = std::vector<double>(501, kUsualClutter_m)};
  shore->sea_toward(path.bearing, path.distance_m, cover.sea);
  REQUIRE(cover.sea.size() == 1);
  const std::size_t points = 501;
  const double spacing_m = path.distance_m / 500.0;
  std::vector<double> heights_m(points, 20.0);  // Long Island first, New Haven last
  for (std::size_t i = 0; i < points; ++i) {
    const double from_stop_m = static_cast<double>(points - 1 - i) * spacing_m;
    if (from_stop_m > cover.sea[0].from_m && from_stop_m < cover.sea[0].to_m) heights_m[i] = 0.0;
  }
  heights_m[points - 2] = 300.0;  // a hill by the coast
  const PathGround ground = with_cover({.spacing_m = spacing_m, .heights_m = heights_m},
                                       AlongShore{.shore = *shore, .bearing = path.bearing}, cover);
  const double sea_m = cover.sea[0].to_m - cover.sea[0].from_m;
  CHECK(ground.sea_share == Approx(sea_m / path.distance_m).margin(0.01));
  CHECK(ground.stop_coast_km == Approx(cover.sea[0].from_m / 1000.0).margin(0.2));
  CHECK(ground.station_coast_km ==
        Approx((path.distance_m - cover.sea[0].to_m) / 1000.0).margin(0.2));
  CHECK(ground.zones.front() == p1812::Zone::coastal_land);
  CHECK(ground.zones[points - 2] == p1812::Zone::inland);
  CHECK(ground.zones[points / 2] == p1812::Zone::sea);
  CHECK(ground.clutter_m.front() == kUsualClutter_m);
  CHECK(ground.clutter_m[points / 2] == 0.0);
  const PathGround inland = with_cover({.spacing_m = spacing_m, .heights_m = heights_m}, {}, cover);
  CHECK(inland.zones.empty());
  CHECK(inland.sea_share == 0.0);
  CHECK(inland.clutter_m.size() == points);
}

TEST_CASE("woods along the way cost, open fields cost less than the usual clutter") {
  const auto tiles = test::country(1, test::hills());
  const Station station = test::transmitter(test::north_of_stop(60e3), 30, 500.0, 100.0);
  const auto field_over = [&](std::optional<landcover::CoverClass> cover) {
    landcover::CoverSet covers;
    if (cover) covers.add(test::made_cover({44, -101}, [&](int, int) { return *cover; }));
    return *outlook_of({tiles, nullptr, &covers}, station, test::stop_position()).field_dbuvm;
  };
  const double unknown_dbuvm = field_over(std::nullopt);
  CHECK(field_over(landcover::CoverClass::suburban) == unknown_dbuvm);
  CHECK(field_over(landcover::CoverClass::open) > unknown_dbuvm + 1.0);
  CHECK(field_over(landcover::CoverClass::trees) < unknown_dbuvm - 0.5);
}

TEST_CASE("a cell of sea without a tile is no gap") {
  // The mainland's tile is there; Long Island's and most of the Sound's is not.
  terrain::TileSet tiles;
  tiles.add(test::made_tile({41, -73}, 1201, test::flat(30.0)));
  const Station station = test::transmitter(kLongIsland, 20, 200.0, 100.0);
  const Outlook without = outlook_of({tiles}, station, kNewHaven);
  const Outlook with = outlook_of({tiles, &test::borders()}, station, kNewHaven);
  CHECK(without.mode == PathMode::partial);
  CHECK(with.terrain_coverage > without.terrain_coverage + 0.03);
}

// Recommendation ITU-R P.1812 and the terrain model alike: ducts carry over the sea.
TEST_CASE("over the sea more arrives than over land, in the desert less") {
  // 134 km from the mainland south of Los Angeles to San Nicolas Island, nearly all sea.
  const Position island = at(33.25, -119.50), mainland = at(33.65, -117.95);
  terrain::TileSet tiles;
  for (const int longitude : {-120, -119, -118}) {
    tiles.add(test::made_tile({33, longitude}, 1201, test::flat(0.0)));
  }
  const Station station = test::transmitter(mainland, 20, 200.0, 500.0);
  const Outlook as_land = outlook_of({tiles}, station, island);
  const Outlook as_sea = outlook_of({tiles, &test::borders()}, station, island);
  std::cout << "Over " << as_sea.distance_m / 1000.0 << " km of sea: " << *as_sea.field_dbuvm
            << " dBuV/m, as land " << *as_land.field_dbuvm << "\n";
  CHECK(*as_sea.field_dbuvm > *as_land.field_dbuvm + 3.0);

  // The same hills near Phoenix and in Kansas.
  const auto field_in = [](int latitude, int longitude) {
    const auto hills = [&](double latitude_deg, double longitude_deg) {
      return test::hills()(44.0 + latitude_deg - latitude, -101.0 + longitude_deg - longitude);
    };
    terrain::TileSet land;
    land.add(test::made_tile({latitude, longitude}, 1201, hills));
    land.add(test::made_tile({latitude + 1, longitude}, 1201, hills));
    const Position stop = at(latitude + 0.05, longitude + 0.5);
    const Station far = test::transmitter(at(latitude + 1.4, longitude + 0.5), 20, 800.0, 1000.0);
    return *outlook_of({land}, far, stop).field_dbuvm;
  };
  const double desert_dbuvm = field_in(32, -112), plains_dbuvm = field_in(38, -98);
  std::cout << "Over 150 km of hills: " << desert_dbuvm << " dBuV/m in the desert, " << plains_dbuvm
            << " on the plains\n";
  CHECK(desert_dbuvm < plains_dbuvm - 0.5);
}

}  // namespace mastwise::reception
