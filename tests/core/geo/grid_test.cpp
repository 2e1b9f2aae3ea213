#include "core/geo/grid.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

GridZone zone_at(double latitude_deg, double longitude_deg) {
  return grid_zone_at(Position::at_deg(latitude_deg, longitude_deg).value());
}

// The sphere's meridian convergence, atan(tan(lon - lon0) sin lat).
double closed_form_deg(double latitude_deg, double from_meridian_deg) {
  const double radians = std::acos(-1.0) / 180.0;
  return std::atan(std::tan(from_meridian_deg * radians) * std::sin(latitude_deg * radians)) /
         radians;
}

}  // namespace

// The closed form is for a sphere. The ellipsoid's next term is, in radians,
// dl^3 sin(lat) cos^2(lat) (3 e'^2 cos^2(lat) + ...) / 3 with e'^2 = 0.00674 (the usual series of
// transverse Mercator convergence): at 3 degrees off the meridian no more than 1.6e-5 degree.
TEST_CASE("UTM convergence keeps to the closed form near the central meridian") {
  constexpr double kCentralMeridianDeg = -69.0;  // zone 19
  for (double latitude_deg = -79.0; latitude_deg <= 83.0; latitude_deg += 9.0) {
    for (double off_deg = -2.999; off_deg < 3.0; off_deg += 0.3) {
      INFO(latitude_deg << " " << off_deg);
      const GridZone zone = zone_at(latitude_deg, kCentralMeridianDeg + off_deg);
      CHECK(zone.convergence.east_deg() ==
            Approx(closed_form_deg(latitude_deg, off_deg)).margin(2e-5));
    }
  }
}

// Source: facts of the trade: 2.12 degrees at a zone's edge at 45 degrees.
TEST_CASE("convergence at a zone's edge at 45 degrees is 2.12 degrees, and its sign") {
  CHECK(zone_at(45.0, -66.0001).convergence.east_deg() == Approx(2.12).margin(0.005));
  CHECK(zone_at(45.0, -71.9999).convergence.east_deg() == Approx(-2.12).margin(0.005));
  CHECK(zone_at(-45.0, -66.0001).convergence.east_deg() == Approx(-2.12).margin(0.005));
  CHECK(zone_at(45.0, -69.0).convergence.east_deg() == 0.0);
}

// Source: the zone rules of UTM and UPS (NGA.SIG.0012), with 32V and Svalbard.
TEST_CASE("zones have the names that the notation prints") {
  CHECK(zone_at(44.435217, -71.675993).name == "19N");
  CHECK(zone_at(-33.8688, 151.2093).name == "56S");
  CHECK(zone_at(0.0, 0.0).name == "31N");
  CHECK(zone_at(-0.0001, 0.0).name == "31S");
  CHECK(zone_at(60.5, 5.5).name == "32N");
  CHECK(zone_at(78.0, 20.0).name == "33N");
  CHECK(zone_at(10.0, 180.0).name == "1N");
  CHECK(zone_at(10.0, -180.0).name == "1N");
  CHECK(zone_at(10.0, 179.999).name == "60N");
  CHECK(zone_at(84.0, 10.0).name == "UPS N");
  CHECK(zone_at(-80.001, 10.0).name == "UPS S");
}

// On the polar stereographic grid the meridian of lon points at lon from grid north: in the north
// grid north is east of true north by lon, in the south by -lon.
TEST_CASE("UPS convergence is the longitude") {
  CHECK(zone_at(87.0, 30.0).convergence.east_deg() == Approx(30.0).margin(1e-9));
  CHECK(zone_at(87.0, -120.0).convergence.east_deg() == Approx(-120.0).margin(1e-9));
  CHECK(zone_at(-87.0, 30.0).convergence.east_deg() == Approx(-30.0).margin(1e-9));
}
