#include "core/sky/pole_star.hpp"

#include "tests/support/utc_text.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::utc;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

}  // namespace

// Source: the IAU's SOFA algorithms (iauPmsafe, iauAtco13) by ERFA 2.0 with the Hipparcos figures
// of HIP 11767, no air, UT1 = UTC; PyEphem 4.1.4 with its star gives the same within 0.0005.
TEST_CASE("Polaris is where the IAU's algorithms put it", "[sky]") {
  struct Row {
    const char* time;
    double latitude_deg, longitude_deg, azimuth_deg, altitude_deg;
  };
  const Row rows[] = {
      {"2026-01-15T03:00:00Z", 44.27056, -71.30327, 359.4189, 44.7331},
      {"2026-03-20T06:00:00Z", 61.2181, -149.9003, 358.7666, 61.4071},
      {"2026-06-21T23:00:00Z", 51.4778, -0.0015, 0.4824, 50.9267},
      {"2026-07-02T04:30:00Z", 34.0522, -118.2437, 0.0420, 33.4242},
      {"2027-10-10T10:00:00Z", 25.7617, -80.1918, 359.5451, 26.2304},
      {"2027-12-01T22:00:00Z", 78.2167, 15.6333, 359.5330, 78.8266},
      {"2029-09-01T12:00:00Z", 20.0, -155.5, 0.4482, 20.4531},
      {"2030-02-01T18:00:00Z", 64.1466, -21.9426, 0.6720, 64.6791},
      {"2035-11-11T01:00:00Z", 10.0, -67.0, 0.4831, 10.3570},
  };
  for (const Row& row : rows) {
    INFO(row.time);
    const sky::PoleStar star =
        sky::pole_star_at(at(row.latitude_deg, row.longitude_deg), utc(row.time));
    const auto azimuth = Bearing<True>::degrees(row.azimuth_deg);
    CHECK((star.azimuth - azimuth).size_deg() <= 0.002);
    CHECK(star.altitude_deg == Approx(row.altitude_deg).margin(0.002));
  }
}

// Sources: the declination of 2011 that the Nautical Almanac gives, 89 18.9', as quoted by
// navigators in January 2011; for 2050 Meeus, Astronomical Algorithms, 2nd ed., ch. 21, exercise:
// mean place 89 27' 15.38" (from memory). Aberration and nutation move an apparent place by up to
// 0.008.
TEST_CASE("Polaris approaches the pole as published", "[sky]") {
  CHECK(sky::polar_distance_deg(utc("2011-01-19T00:00:00Z")) == Approx(41.1 / 60.0).margin(0.008));
  const double meeus_deg = 90.0 - (89.0 + 27.0 / 60.0 + 15.38 / 3600.0);
  CHECK(sky::polar_distance_deg(utc("2050-01-01T00:00:00Z")) == Approx(meeus_deg).margin(0.008));
}

TEST_CASE("Polaris is never farther from north than its elongation", "[sky]") {
  const UtcTime begin = utc("2026-07-02T00:00:00Z");
  for (const double latitude_deg : {10.0, 34.0, 45.0, 61.2, 70.0}) {
    const Position place = at(latitude_deg, -100.0);
    const double greatest_deg =
        sky::greatest_azimuth_deg(latitude_deg, sky::polar_distance_deg(begin));
    double farthest_deg = 0.0;
    for (int quarter = 0; quarter < 96; ++quarter) {
      const sky::PoleStar star =
          sky::pole_star_at(place, begin + std::chrono::minutes(15 * quarter));
      farthest_deg =
          std::fmax(farthest_deg, (star.azimuth - Bearing<True>::degrees(0.0)).size_deg());
    }
    INFO(latitude_deg);
    CHECK(farthest_deg <= greatest_deg + 0.0005);
    CHECK(farthest_deg >= 0.99 * greatest_deg);
    // Common practice: 0.65 / cos(latitude).
    CHECK(farthest_deg <= 0.65 / std::cos(latitude_deg * 3.14159265358979 / 180.0));
  }
}

TEST_CASE("Polaris is offered in the north and in the dark only", "[sky]") {
  // At 71 W the sun of 15 January has set for hours at 03:00Z; at 17:00Z it is noon.
  const Position north = at(44.27056, -71.30327);
  CHECK(!sky::pole_star_at(north, utc("2026-01-15T03:00:00Z")).why_none);
  CHECK(sky::pole_star_at(north, utc("2026-01-15T17:00:00Z")).why_none == sky::NoPoleStar::NotDark);
  CHECK(sky::pole_star_at(at(4.0, -71.3), utc("2026-01-15T03:00:00Z")).why_none ==
        sky::NoPoleStar::TooFarSouth);
  CHECK(sky::pole_star_at(at(-33.9, 151.2), utc("2026-01-15T13:00:00Z")).why_none ==
        sky::NoPoleStar::TooFarSouth);
}

// Source: US Naval Observatory, civil twilight at Anchorage on 2020-01-05 ends at 01:58Z.
TEST_CASE("it is dark when civil twilight ends", "[sky]") {
  const Position anchorage = at(61.216667, -149.866667);
  CHECK(sky::pole_star_at(anchorage, utc("2020-01-06T01:57:00Z")).why_none ==
        sky::NoPoleStar::NotDark);
  CHECK(!sky::pole_star_at(anchorage, utc("2020-01-06T01:59:30Z")).why_none);
}
