#include "core/nmea/parked.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using namespace std::chrono_literals;
using Catch::Matchers::WithinAbs;

namespace {

// Meters of a degree on the WGS84 ellipsoid at the equator: pi a / 180 along it, and pi a (1 - e^2)
// / 180 along a meridian, with a = 6378137 m and e^2 = 0.00669438.
constexpr double kEast_m_a_deg = 111319.491;
constexpr double kNorth_m_a_deg = 110574.276;

Position near_equator(double east_m, double north_m, double longitude_deg) {
  return *Position::at_deg(north_m / kNorth_m_a_deg, longitude_deg + east_m / kEast_m_a_deg);
}

}  // namespace

TEST_CASE("one position is the mean and has no scatter") {
  ParkedAverage average;
  CHECK_FALSE(average.result());
  average.add(*Position::at_deg(44.0, -71.0), Monotonic(5s));
  REQUIRE(average.result());
  CHECK_FALSE(average.result()->scatter_m);
  CHECK(average.result()->count == 1);
  CHECK(average.result()->duration == 0ms);
  CHECK_THAT(average.result()->mean.latitude_deg(), WithinAbs(44.0, 1e-12));
  CHECK_THAT(average.result()->mean.longitude_deg(), WithinAbs(-71.0, 1e-12));
}

// By hand: (+-3, 0) and (0, +-3) m have their mean at 0 and a sum of squares of 36 m2 over both
// axes; one axis: sqrt(36 / (2 * 3)) = 2.449 m. On the antimeridian, as the mean of +179.99 and
// -179.99 degrees is not 0.
TEST_CASE("mean and scatter are right across the antimeridian") {
  for (const double longitude_deg : {0.0, 180.0, -71.0}) {
    ParkedAverage average;
    Monotonic now{};
    for (const auto& [east_m, north_m] :
         {std::pair(3.0, 0.0), {-3.0, 0.0}, {0.0, 3.0}, {0.0, -3.0}}) {
      average.add(near_equator(east_m, north_m, longitude_deg), now);
      now += 1s;
    }
    const ParkedPosition parked = *average.result();
    const double off_deg = parked.mean.longitude_deg() - longitude_deg;
    CHECK_THAT(std::remainder(off_deg, 360.0) * kEast_m_a_deg, WithinAbs(0.0, 0.001));
    CHECK_THAT(parked.mean.latitude_deg() * kNorth_m_a_deg, WithinAbs(0.0, 0.001));
    CHECK_THAT(*parked.scatter_m, WithinAbs(2.4495, 0.001));
    CHECK(parked.count == 4);
    CHECK(parked.duration == 3s);
  }
}

TEST_CASE("the scatter of many positions matches their distribution") {
  std::mt19937 random(1);
  std::normal_distribution<double> error_m(0.0, 2.5);
  ParkedAverage average;
  for (int i = 0; i < 20000; ++i) {
    average.add(near_equator(error_m(random), error_m(random), 20.0), Monotonic(i * 1s));
  }
  CHECK(average.result()->count > 19900);
  CHECK_THAT(*average.result()->scatter_m, WithinAbs(2.5, 0.05));
}

TEST_CASE("an outlier is left out, and a move restarts the average") {
  ParkedAverage average;
  Monotonic now{};
  const auto hear = [&](double east_m) {
    average.add(near_equator(east_m, 0.0, 20.0), now);
    now += 1s;
  };
  for (int i = 0; i < 10; ++i) hear(i % 2 == 0 ? 1.0 : -1.0);
  hear(500.0);
  hear(500.0);
  CHECK(average.result()->count == 10);
  hear(1.0);
  CHECK(average.result()->count == 11);
  for (int i = 0; i < 3; ++i) hear(40.0);
  CHECK(average.result()->count == 3);
  CHECK(average.result()->duration == 2s);
  CHECK_THAT((average.result()->mean.longitude_deg() - 20.0) * kEast_m_a_deg,
             WithinAbs(40.0, 0.001));
}

TEST_CASE("a rig that creeps or drives is not parked") {
  ParkedAverage creeping;
  ParkedAverage driving;
  for (int second = 0; second < 3600; ++second) {
    creeping.add(near_equator(0.3 * second, 0.0, 20.0), Monotonic(second * 1s));
    driving.add(near_equator(10.0 * second, 0.0, 20.0), Monotonic(second * 1s));
  }
  // Three positions in a row more than 30 m from the mean end it: 60 m at 0.3 m/s is 200 s.
  CHECK(creeping.result()->count < 210);
  CHECK(driving.result()->count < 10);
}

TEST_CASE("the average works at the poles") {
  ParkedAverage average;
  for (int i = 0; i < 36; ++i) {
    average.add(*Position::at_deg(89.99999, i * 10.0), Monotonic(i * 1s));
  }
  CHECK_THAT(average.result()->mean.latitude_deg(), WithinAbs(90.0, 1e-8));
}

TEST_CASE("the scatter to draw is spread over the time and centered on the mean") {
  std::mt19937 random(3);
  std::normal_distribution<double> off_m(0.0, 2.0);
  ParkedAverage average;
  Monotonic now{};
  CHECK(average.scatter().empty());
  for (int i = 0; i < 1'000; ++i) {
    average.add(near_equator(off_m(random), off_m(random), -71.0), now);
    now += 1s;
    const auto shown = average.scatter();
    CHECK(shown.size() <= ParkedAverage::kShown);
    CHECK(shown.size() >= std::min<std::size_t>(i + 1, ParkedAverage::kShown / 2));
  }
  double east_m = 0.0, north_m = 0.0, squares_m2 = 0.0;
  const auto shown = average.scatter();
  for (const auto& offset : shown) {
    east_m += offset.east_m;
    north_m += offset.north_m;
    squares_m2 += offset.east_m * offset.east_m + offset.north_m * offset.north_m;
  }
  const auto count = static_cast<double>(shown.size());
  CHECK_THAT(east_m / count, WithinAbs(0.0, 1.2));
  CHECK_THAT(north_m / count, WithinAbs(0.0, 1.2));
  CHECK_THAT(std::sqrt(squares_m2 / 2.0 / count), WithinAbs(2.0, 0.7));
}
