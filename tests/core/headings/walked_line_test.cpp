#include "core/headings/walked_line.hpp"

#include "core/geo/geodesic.hpp"

#include <limits>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const Position kStart = Position::at_deg(44.0, -71.0).value();

Bearing<True> degrees(double value) {
  return Bearing<True>::degrees(value);
}

}  // namespace

// Source: atan(sqrt(2) s / L) by hand: s = 3 m gives 4.9 degrees at 50 m, 2.4 at 100, 1.2 at 200.
TEST_CASE("a longer walked line is more certain", "[walked-line]") {
  struct Row {
    double length_m, error_deg;
  };
  for (const Row row : {Row{50.0, 4.85}, Row{100.0, 2.43}, Row{200.0, 1.215}}) {
    const Position end = destination(kStart, degrees(123.0), row.length_m);
    const auto line = walked_bearing(kStart, end, 3.0);
    REQUIRE(line);
    CHECK(line->bearing.degrees() == Approx(123.0).margin(1e-6));
    CHECK(line->error_deg == Approx(row.error_deg).margin(0.005));
    CHECK(line->distance_m == Approx(row.length_m).margin(1e-6));
    const auto advice_m = walk_for_error_m(line->error_deg, 3.0);
    REQUIRE(advice_m);
    CHECK(*advice_m == Approx(row.length_m).margin(1e-6));
  }
}

// Source: by hand, atan(10 / 1000) is 0.573 degrees.
TEST_CASE("a farther landmark is more certain", "[walked-line]") {
  const auto landmark = landmark_bearing(kStart, destination(kStart, degrees(300.0), 1000.0), 10.0);
  REQUIRE(landmark);
  CHECK(landmark->error_deg == Approx(0.573).margin(0.0005));
  CHECK(landmark->bearing.degrees() == Approx(300.0).margin(1e-6));
}

TEST_CASE("points without a direction are refused with a remedy", "[walked-line]") {
  const auto too_near = walked_bearing(kStart, destination(kStart, degrees(0.0), 4.0), 3.0);
  REQUIRE(!too_near);
  CHECK(too_near.error().message() ==
        "4.0 m apart with 4.2 m of error gives no direction; walk on and average again");
  CHECK(!walked_bearing(kStart, kStart, 3.0));
  CHECK(!walked_bearing(kStart, destination(kStart, degrees(0.0), 50.0), 0.0));
  CHECK(!walked_bearing(kStart, destination(kStart, degrees(0.0), 50.0),
                        std::numeric_limits<double>::quiet_NaN()));
  CHECK(!landmark_bearing(kStart, destination(kStart, degrees(0.0), 5.0), 10.0));
  CHECK(!walk_for_error_m(0.0, 3.0));
  CHECK(!walk_for_error_m(45.0, 3.0));
  CHECK(!line_target(kStart, degrees(10.0), -5.0));
}

TEST_CASE("a walker sees the distance off the line", "[walked-line]") {
  for (const double bearing_deg : {0.0, 90.0, 200.0, 359.0}) {
    INFO(bearing_deg);
    const auto line = degrees(bearing_deg);
    const auto target = line_target(kStart, line, 200.0);
    REQUIRE(target);
    const OnLine at_end = on_line(kStart, line, *target);
    CHECK(at_end.along_m == Approx(200.0).margin(0.001));
    CHECK(at_end.right_of_m == Approx(0.0).margin(0.001));
    const Position halfway = destination(kStart, line, 100.0);
    const Position right = destination(halfway, line + Turn::clockwise_deg(90.0), 7.0);
    const OnLine astray = on_line(kStart, line, right);
    CHECK(astray.along_m == Approx(100.0).margin(0.001));
    CHECK(astray.right_of_m == Approx(7.0).margin(0.001));
    const Position left = destination(halfway, line - Turn::clockwise_deg(90.0), 7.0);
    CHECK(on_line(kStart, line, left).right_of_m == Approx(-7.0).margin(0.001));
  }
  CHECK(on_line(kStart, degrees(90.0), kStart).right_of_m == 0.0);
}
