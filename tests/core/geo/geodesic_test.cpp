#include "core/geo/geodesic.hpp"

#include "tests/core/geo/published_geodesics.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

}  // namespace

TEST_CASE("geodesics agree with the published test set both ways") {
  for (const auto& row : test::kPublishedGeodesics) {
    INFO(row.from_latitude_deg << ' ' << row.from_longitude_deg);
    const Position from = at(row.from_latitude_deg, row.from_longitude_deg);
    const Position to = at(row.to_latitude_deg, row.to_longitude_deg);
    // Folding a bearing into [0, 360) keeps 13 digits after the point.
    const auto bearing = Bearing<True>::degrees(row.bearing_deg);
    const auto bearing_at_end = Bearing<True>::degrees(row.bearing_at_end_deg);

    const PathBetween between = path_between(from, to);
    CHECK((between.bearing - bearing).size_deg() <= 1e-9);
    CHECK((between.bearing_at_end - bearing_at_end).size_deg() <= 1e-9);
    CHECK(std::fabs(between.distance_m - row.distance_m) <= 1e-6);

    const Position reached = destination(from, bearing, row.distance_m);
    CHECK(path_between(reached, to).distance_m <= 1e-6);
  }
}

// Source: the reference data's README, on the station table's transmitters (WGS84 ellipsoid).
TEST_CASE("the two transmitters have their published bearings from the recorded stop") {
  const Position stop = at(44.435217, -71.675993);
  const PathBetween near = path_between(stop, at(44.352778, -71.736944));
  CHECK(near.bearing.degrees() == Approx(207.950).margin(0.0005));
  CHECK(near.distance_m == Approx(10368.18).margin(0.005));
  const PathBetween far = path_between(stop, at(44.571111, -71.893611));
  CHECK(far.bearing.degrees() == Approx(311.183).margin(0.0005));
  CHECK(far.distance_m == Approx(22968.18).margin(0.005));
}

// Source: a quarter of the WGS84 meridian is 10,001,965.729 m; its equator's radius is 6,378,137 m.
TEST_CASE(
    "geodesics match a quarter meridian, a degree of the equator, and cross the antimeridian") {
  CHECK(path_between(at(0, 20), at(90, 0)).distance_m == Approx(10001965.729).margin(0.001));
  CHECK(path_between(at(0, 20), at(90, 0)).bearing.degrees() == 0.0);
  const double degree_m = 6378137.0 * std::acos(-1.0) / 180.0;
  const PathBetween across = path_between(at(0, 179.5), at(-0.0, -179.5));
  CHECK(across.distance_m == Approx(degree_m).margin(1e-6));
  CHECK(across.bearing.degrees() == 90.0);
  CHECK(path_between(at(0, -180), at(0, 180)).distance_m == 0.0);
}

TEST_CASE("coincident positions have distance 0 and a meaningless bearing 0") {
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
