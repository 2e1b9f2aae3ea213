#include "core/geo/geodesic.hpp"

#include "tests/support/reference.hpp"

#include <cmath>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

// GeodTest goes beyond 360 degrees in none of its rows; folding keeps 13 digits after the point.
Bearing<True> bearing(const std::string& degrees) {
  return Bearing<True>::degrees(std::stod(degrees));
}

}  // namespace

// Source: 20 rows of the geodesic test set for WGS84 (doi 10.5281/zenodo.32156).
TEST_CASE("geodesics agree with the published test set both ways") {
  const auto path = test::reference("checks/geodesic_geodtest20.csv");
  if (!path) return;
  const auto lines = test::read_lines(*path);
  REQUIRE(lines.size() == 21);
  for (std::size_t row = 1; row < lines.size(); ++row) {
    const auto fields = test::split(lines[row], ',');
    INFO(lines[row]);
    const Position from = at(std::stod(fields[0]), std::stod(fields[1]));
    const Position to = at(std::stod(fields[3]), std::stod(fields[4]));
    const double distance_m = std::stod(fields[6]);

    const PathBetween between = path_between(from, to);
    CHECK((between.bearing - bearing(fields[2])).size_deg() <= 1e-9);
    CHECK((between.bearing_at_end - bearing(fields[5])).size_deg() <= 1e-9);
    CHECK(std::fabs(between.distance_m - distance_m) <= 1e-6);

    const Position reached = destination(from, bearing(fields[2]), distance_m);
    CHECK(path_between(reached, to).distance_m <= 1e-6);
  }
}

// Source: the reference data's README, on the station table's transmitters (WGS84 ellipsoid).
TEST_CASE("the two transmitters seen from the recorded stop") {
  const Position stop = at(44.435217, -71.675993);
  const PathBetween near = path_between(stop, at(44.352778, -71.736944));
  CHECK(near.bearing.degrees() == Approx(207.950).margin(0.0005));
  CHECK(near.distance_m == Approx(10368.18).margin(0.005));
  const PathBetween far = path_between(stop, at(44.571111, -71.893611));
  CHECK(far.bearing.degrees() == Approx(311.183).margin(0.0005));
  CHECK(far.distance_m == Approx(22968.18).margin(0.005));
}

// Source: a quarter of the WGS84 meridian is 10,001,965.729 m; its equator's radius is 6,378,137 m.
TEST_CASE("a quarter meridian, a degree of the equator, and the antimeridian") {
  CHECK(path_between(at(0, 20), at(90, 0)).distance_m == Approx(10001965.729).margin(0.001));
  CHECK(path_between(at(0, 20), at(90, 0)).bearing.degrees() == 0.0);
  const double degree_m = 6378137.0 * std::acos(-1.0) / 180.0;
  const PathBetween across = path_between(at(0, 179.5), at(-0.0, -179.5));
  CHECK(across.distance_m == Approx(degree_m).margin(1e-6));
  CHECK(across.bearing.degrees() == 90.0);
  CHECK(path_between(at(0, -180), at(0, 180)).distance_m == 0.0);
}

TEST_CASE("coincident positions have no distance and the bearing 0 that means nothing") {
  for (const Position place : {at(44.4, -71.7), at(0, 0), at(90, 0), at(-90, 50)}) {
    const PathBetween none = path_between(place, place);
    CHECK(none.distance_m == 0.0);
    CHECK(none.bearing.degrees() == 0.0);
    CHECK(none.bearing_at_end.degrees() == 0.0);
  }
}

TEST_CASE("a negative distance goes backward") {
  const Position start = at(44.4, -71.7);
  const auto heading = Bearing<True>::degrees(30.0);
  const Position back = destination(start, heading, -5000.0);
  CHECK(path_between(back, destination(start, heading.reciprocal(), 5000.0)).distance_m <= 1e-6);
  CHECK(back.latitude_deg() < start.latitude_deg());
}
