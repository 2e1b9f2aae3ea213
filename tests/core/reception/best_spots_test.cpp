#include "core/reception/best_spots.hpp"

#include <string>

#include <catch2/catch.hpp>

namespace mastwise::reception {
namespace {

// Cells of 100 m; '.' is unknown, a digit d is a chance of 10 d percent.
ChanceMap map_of(const std::vector<std::string>& rows) {
  ChanceMap map;
  for (const std::string& row : rows) {
    for (const char letter : row) {
      if (letter == '.') {
        map.emplace_back();
      } else {
        map.emplace_back(10.0 * (letter - '0'));
      }
    }
  }
  return map;
}

AreaGrid nine_by_nine() {
  return *AreaGrid::around(*Position::at_deg(44.5, -100.5), 450.0, 9);
}

}  // namespace

TEST_CASE("best spots are peaks, sorted by gain per distance", "[spots]") {
  const ChanceMap map = map_of({"333333338",    // 8: a corner, 566 m away, beyond the radius
                                "333333333",    //
                                "333333333",    //
                                "335333333",    // 5: 100 m north, 200 m west of the stop
                                "333333377",    // 7s: 300 and 400 m east
                                "333333333",    //
                                "3.3333333",    //
                                "333333333",    //
                                "333393333"});  // 9: 400 m south
  const auto spots = best_spots(nine_by_nine(), map, 30.0, {.apart_m = 50.0});
  REQUIRE(spots.size() == 3);
  // 60 points over 400 m, 40 over 300 and 20 over 224: 0.150, 0.133 and 0.089 a meter.
  CHECK(spots[0].chance_percent == 90.0);
  CHECK(spots[0].gain_percent == 60.0);
  CHECK(spots[0].distance_m == Approx(400.0));
  CHECK(spots[0].bearing.degrees() == Approx(180.0));
  CHECK(spots[1].chance_percent == 70.0);
  CHECK(spots[1].distance_m == Approx(300.0));  // the near cell of the two
  CHECK(spots[1].bearing.degrees() == Approx(90.0));
  CHECK(spots[2].chance_percent == 50.0);
  CHECK(spots[2].distance_m == Approx(223.607));
  CHECK(spots[2].bearing.degrees() == Approx(296.565));  // atan2(-2, 1)
}

TEST_CASE("a slope has one spot, and spots keep their distance", "[spots]") {
  const ChanceMap slope = map_of({"333345678", "333345678", "333345678", "333345678", "333345678",
                                  "333345678", "333345678", "333345678", "333345678"});
  const auto one = best_spots(nine_by_nine(), slope, 30.0);
  REQUIRE(one.size() == 1);
  CHECK(one[0].chance_percent == 80.0);
  CHECK(one[0].distance_m == Approx(400.0));

  const ChanceMap twins = map_of({"333333333", "333333333", "333333333", "333333333", "333333636",
                                  "333333333", "333333333", "333333333", "333333333"});
  CHECK(best_spots(nine_by_nine(), twins, 30.0, {.apart_m = 199.0}).size() == 2);
  CHECK(best_spots(nine_by_nine(), twins, 30.0, {.apart_m = 201.0}).size() == 1);
  CHECK(best_spots(nine_by_nine(), twins, 30.0, {.most = 1}).size() == 1);
  CHECK(best_spots(nine_by_nine(), twins, 30.0, {.least_gain_percent = 31.0}).empty());
  CHECK(best_spots(nine_by_nine(), ChanceMap(81), 30.0).empty());
}

TEST_CASE("the chance at the stop comes from the cells that touch it", "[spots]") {
  ChanceMap map = map_of({"333333333", "333333333", "333333333", "333333333", "333373333",
                          "333333333", "333333333", "333333333", "333333333"});
  CHECK(chance_at_stop(nine_by_nine(), map) == 70.0);
  const auto even = AreaGrid::around(*Position::at_deg(44.5, -100.5), 200.0, 4);
  ChanceMap four = map_of({"0000", "0240", "0680", "0000"});
  CHECK(chance_at_stop(*even, four) == Approx(50.0));
  four[5].reset();
  CHECK_FALSE(chance_at_stop(*even, four));
}

}  // namespace mastwise::reception
