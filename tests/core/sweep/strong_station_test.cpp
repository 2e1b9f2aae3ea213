#include "core/sweep/strong_station.hpp"

#include "core/geo/line_error.hpp"
#include "tests/support/sweeps.hpp"

#include <cmath>
#include <limits>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using aim::dial_correction;
using aim::StrongStation;

namespace {

StrongStation station(double bearing_deg, double peak_deg, double peak_sigma_deg = 3.0) {
  return {.bearing = Bearing<True>::degrees(bearing_deg),
          .bearing_sigma_deg = 1.0,
          .peak = Bearing<Dial>::degrees(peak_deg),
          .peak_sigma_deg = peak_sigma_deg,
          .dial_sigma_deg = 2.0};
}

}  // namespace

// By hand: 9 + 4 + 1 = 14.
TEST_CASE("one strong station corrects every other heading", "[strong]") {
  const auto correction = dial_correction(std::vector<StrongStation>{station(5.0, 352.0)});
  REQUIRE(correction);
  CHECK(correction->turn.clockwise_deg() == Approx(13.0));
  CHECK(correction->sigma_deg == Approx(std::sqrt(14.0)));
  CHECK_FALSE(correction->implausible);
  CHECK_FALSE(correction->contradicts);
  const auto corrected = to_true(Bearing<Dial>::degrees(350.0), *correction);
  CHECK(corrected.bearing.degrees() == Approx(3.0));
  CHECK(corrected.sigma_deg == Approx(std::sqrt(14.0 + 4.0)));
  CHECK(to_dial(Bearing<True>::degrees(3.0), *correction).degrees() == Approx(350.0));
}

TEST_CASE("a correction more than 20 degrees off the expected one is in doubt", "[strong]") {
  const std::vector<StrongStation> far{station(100.0, 79.0)};
  CHECK(dial_correction(far)->implausible);
  CHECK_FALSE(dial_correction(far, Turn::clockwise_deg(14.0))->implausible);
  CHECK(
      dial_correction(std::vector<StrongStation>{station(100.0, 95.0)}, Turn::clockwise_deg(-170.0))
          ->implausible);
}

// By hand: weights 1/14 and 1/(14 + 27 - 0) of 6 (36 + 4 + 1 = 41).
TEST_CASE("several strong stations are weighted by their errors", "[strong]") {
  const std::vector<StrongStation> two{station(10.0, 0.0), station(200.0, 186.0, 6.0)};
  const auto both = dial_correction(two);
  REQUIRE(both);
  const double weight = 1.0 / 14.0 + 1.0 / 41.0;
  CHECK(both->turn.clockwise_deg() == Approx((10.0 / 14.0 + 14.0 / 41.0) / weight));
  CHECK(both->sigma_deg == Approx(1.0 / std::sqrt(weight)));
  // Over the seam of a half circle: 179 and -179 are two degrees apart.
  const std::vector<StrongStation> seam{station(179.0, 0.0), station(181.0, 0.0)};
  CHECK(std::fabs(dial_correction(seam)->turn.clockwise_deg()) == Approx(180.0));
}

TEST_CASE("a station that contradicts the others is named and widens the error", "[strong]") {
  const std::vector<StrongStation> three{station(10.0, 0.0), station(90.0, 41.0),
                                         station(200.0, 191.0)};
  const auto correction = dial_correction(three);
  REQUIRE(correction);
  REQUIRE(correction->contradicts);
  CHECK(*correction->contradicts == 1);
  CHECK(correction->sigma_deg > 10.0);
}

TEST_CASE("the error of a correction matches many simulations", "[strong]") {
  test::Chance chance(11);
  double square_sum = 0.0, stated = 0.0;
  constexpr int kTimes = 4000;
  for (int i = 0; i < kTimes; ++i) {
    std::vector<StrongStation> stations;
    for (const double bearing : {20.0, 130.0}) {
      auto one = station(bearing + chance.normal(), bearing - 8.0);
      one.peak = one.peak + Turn::clockwise_deg(3.0 * chance.normal() + 2.0 * chance.normal());
      stations.push_back(one);
    }
    const auto correction = dial_correction(stations);
    const double error = correction->turn.clockwise_deg() - 8.0;
    square_sum += error * error;
    stated = 1.0 / std::sqrt(2.0 / 14.0);
  }
  // The mean square of 4,000 scatters by 2.2 %.
  CHECK(std::sqrt(square_sum / kTimes) == Approx(stated).epsilon(0.05));
}

TEST_CASE("strong stations without errors are refused", "[strong]") {
  CHECK_FALSE(dial_correction({}));
  CHECK_FALSE(dial_correction(std::vector<StrongStation>{station(1.0, 2.0, -3.0)}));
  CHECK_FALSE(dial_correction(
      std::vector<StrongStation>{station(1.0, 2.0, std::numeric_limits<double>::quiet_NaN())}));
  CHECK_FALSE(dial_correction(std::vector<StrongStation>{StrongStation{}}));
}

// trade figures, common practice: 10 m at 1 km is 0.6 degrees.
TEST_CASE("a position error becomes a bearing error", "[strong]") {
  CHECK(angle_of_error_deg(10.0, 1000.0) == Approx(0.573).margin(0.001));
}
