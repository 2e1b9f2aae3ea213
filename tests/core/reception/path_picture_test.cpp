#include "core/reception/path_picture.hpp"

#include "tests/core/reception/invented_country.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

namespace mastwise::reception {

TEST_CASE("the picture shows the ground, the ray and the zone around it") {
  const auto tiles = test::country(1, test::one_ridge());
  const Receiver receiver = test::roof_antenna();
  const auto list =
      survey(receiver, {test::transmitter(test::north_of_stop(50e3), 20, 500.0, 100.0)}, tiles);
  Scratch scratch;
  const auto picture = path_picture(receiver, list.at(0), tiles, 101, scratch);
  REQUIRE(picture);
  REQUIRE(picture->points.size() == 101);
  CHECK(picture->points.front().distance_m == 0.0);
  CHECK(picture->points.back().distance_m == Approx(50e3).margin(1.0));
  CHECK(*picture->points.front().ground_m == Approx(200.0).margin(0.01));
  CHECK(*picture->points.front().line_m == Approx(200.0 + receiver.gear.height_m).margin(0.01));
  CHECK(*picture->points.back().line_m == Approx(500.0).margin(0.01));
  CHECK(*picture->station_antenna_m == Approx(500.0).margin(0.01));
  // 4/3 earth: the bulge amid 50 km is 36.8 m; 0.6 of the first Fresnel zone there at 509 MHz is
  // 0.6 sqrt(0.589 m 25 km 25 km / 50 km) = 51.5 m.
  const PicturePoint& middle = picture->points[50];
  CHECK(*middle.ground_m == Approx(200.0 + 36.8).margin(0.2));
  CHECK(*middle.line_m - *middle.fresnel_m == Approx(51.5).margin(0.1));
  // The ridge is far narrower than the 500 m between points but is still drawn.
  double highest_m = 0.0;
  for (const PicturePoint& point : picture->points) {
    highest_m = std::max(highest_m, point.ground_m.value_or(0.0));
  }
  // 600 m of ridge between samples 93 m apart, and 26.8 m of bulge.
  CHECK(highest_m > 570.0);
  REQUIRE(picture->obstacles.size() >= 1);
  CHECK(picture->obstacles[0].ground_m == Approx(highest_m).margin(1.0));
  CHECK(picture->obstacles[0].obstacle == list[0].outlook.obstacles[0]);
}

TEST_CASE("the picture has gaps without terrain, and no ray without heights") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Receiver receiver = test::roof_antenna();
  Station station = test::transmitter(test::north_of_stop(150e3), 20, 500.0, 100.0);
  station.haat_m = 300.0;
  station.antenna_amsl_m.reset();
  const auto list = survey(receiver, {station}, tiles);
  CHECK(list.at(0).outlook.mode == PathMode::partial);
  Scratch scratch;
  const auto picture = path_picture(receiver, list[0], tiles, 100, scratch);
  REQUIRE(picture);
  CHECK(picture->points.front().ground_m);
  CHECK_FALSE(picture->points.back().ground_m);
  CHECK_FALSE(picture->points.back().line_m);
  CHECK(picture->terrain_coverage == Approx(110.0 / 150.0).margin(0.01));
  CHECK_FALSE(path_picture(receiver, list[0], terrain::TileSet(), 100, scratch));
}

}  // namespace mastwise::reception
