#include "core/reception/route.hpp"

#include "core/geo/geodesic.hpp"

#include <catch2/catch.hpp>

namespace mastwise::reception {

TEST_CASE("a route is sampled along its geodesics", "[route]") {
  const Position start = *Position::at_deg(44.0, -100.0);
  const Position corner = destination(start, Bearing<True>::degrees(10.0), 25'000.0);
  const Position end = destination(corner, Bearing<True>::degrees(100.0), 12'000.0);
  const std::vector<Position> points{start, corner, corner, end};
  const auto places = sample_route(points, 10.0);
  REQUIRE(places);
  REQUIRE(places->size() == 5);  // 0, 10, 20, 30 and 37 km
  CHECK((*places)[0].position == start);
  CHECK((*places)[4].position == end);
  CHECK((*places)[4].at_km == Approx(37.0));
  CHECK((*places)[2].at_km == Approx(20.0));
  CHECK(path_between(start, (*places)[2].position).distance_m == Approx(20'000.0));
  CHECK((*places)[3].at_km == Approx(30.0));
  CHECK(path_between(corner, (*places)[3].position).distance_m == Approx(5'000.0));
  CHECK(path_between((*places)[3].position, end).distance_m == Approx(7'000.0));

  const std::vector<Position> straight{start, corner};
  const auto even = sample_route(straight, 5.0);
  REQUIRE(even);
  CHECK(even->size() >= 6);
  CHECK(even->back().at_km == Approx(25.0));
}

TEST_CASE("a route that cannot be sampled is an error with its reason", "[route]") {
  const Position start = *Position::at_deg(44.0, -100.0);
  const std::vector<Position> two{start, *Position::at_deg(45.0, -100.0)};
  CHECK_FALSE(sample_route(std::vector<Position>{start}, 1.0));
  CHECK_FALSE(sample_route(std::vector<Position>{start, start}, 1.0));
  CHECK_FALSE(sample_route(two, 0.05));
  const std::vector<Position> long_way{start, *Position::at_deg(20.0, 30.0)};
  CHECK_FALSE(sample_route(long_way, 0.1));
}

TEST_CASE("stretches of a route by hand", "[route]") {
  const std::vector<RouteChance> chances{{0.0, 80.0}, {10.0, 90.0}, {20.0, 60.0}, {30.0, 75.0},
                                         {40.0, {}},  {50.0, 70.0}, {60.0, 70.0}, {65.0, 100.0}};
  const auto stretches = stretches_above(chances, 70.0);
  REQUIRE(stretches.size() == 3);
  CHECK(stretches[0] == Stretch{0.0, 10.0, 80.0, 85.0});
  CHECK(stretches[1] == Stretch{30.0, 30.0, 75.0, 75.0});
  CHECK(stretches[2].from_km == 50.0);
  CHECK(stretches[2].to_km == 65.0);
  CHECK(stretches[2].least_percent == 70.0);
  CHECK(stretches[2].mean_percent == Approx((10.0 * 70.0 + 5.0 * 85.0) / 15.0));
  CHECK(stretches_above(chances, 100.5).empty());
  CHECK(stretches_above({}, 50.0).empty());
}

}  // namespace mastwise::reception
