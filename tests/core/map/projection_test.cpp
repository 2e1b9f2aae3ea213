#include "core/map/projection.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/core/geo/published_geodesics.hpp"

#include <cmath>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using map::PlanePoint;
using map::Projection;

namespace {

Position place_at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

double bearing_deg(PlanePoint point) {
  return std::atan2(point.east_m, point.north_m) * 180.0 / 3.14159265358979323846;
}

// The map's accuracy: within 1 mm and 1e-6 degree of the geodesic.
void check_against(const PathBetween& path, PlanePoint point) {
  CHECK(std::fabs(std::hypot(point.east_m, point.north_m) - path.distance_m) < 1e-3);
  // Nearer than 1 km a millimeter turns the bearing further than 1e-6 degree.
  if (path.distance_m < 1e3) return;
  const Turn off = Bearing<True>::degrees(bearing_deg(point)) - path.bearing;
  CHECK(off.size_deg() < 1e-6);
}

}  // namespace

TEST_CASE("bearing and distance from the center match the geodesic", "[map]") {
  // Against GeographicLib's geodesic (Karney 2013), which is another library than PROJ.
  std::mt19937 random(20261125);
  std::uniform_real_distribution<double> latitude(-89.0, 89.0), longitude(-180.0, 180.0),
      bearing(0.0, 360.0), far_log(0.0, 6.99);
  for (int i = 0; i < 200; ++i) {
    const Position center = place_at(latitude(random), longitude(random));
    const auto plane = Projection::around(center);
    REQUIRE(plane);
    for (int j = 0; j < 5; ++j) {
      const double distance_m = std::pow(10.0, far_log(random));
      const Position there =
          destination(center, Bearing<True>::degrees(bearing(random)), distance_m);
      const auto point = plane->to_plane(there);
      REQUIRE(point);
      check_against(path_between(center, there), *point);
      const auto back = plane->to_earth(*point);
      REQUIRE(back);
      CHECK(path_between(there, *back).distance_m < 1e-3);
    }
  }
}

TEST_CASE("the plane agrees with the published geodesics", "[map]") {
  int near = 0, far = 0;
  for (const auto& row : test::kPublishedGeodesics) {
    const auto plane = Projection::around(place_at(row.from_latitude_deg, row.from_longitude_deg));
    REQUIRE(plane);
    const auto point = plane->to_plane(place_at(row.to_latitude_deg, row.to_longitude_deg));
    if (row.distance_m > Projection::kFarthestM) {
      CHECK_FALSE(point);
      ++far;
      continue;
    }
    REQUIRE(point);
    check_against({.distance_m = row.distance_m,
                   .bearing = Bearing<True>::degrees(row.bearing_deg),
                   .bearing_at_end = {}},
                  *point);
    ++near;
  }
  CHECK(near > 0);
  CHECK(far > 0);
}

TEST_CASE("the center is the middle and the far side is not on the map", "[map]") {
  for (const Position center :
       {place_at(44.0, -121.0), place_at(0.0, 180.0), place_at(90.0, 0.0), place_at(-90.0, 30.0)}) {
    const auto plane = Projection::around(center);
    REQUIRE(plane);
    const auto middle = plane->to_plane(center);
    REQUIRE(middle);
    CHECK(std::hypot(middle->east_m, middle->north_m) < 1e-6);
    const auto back = plane->to_earth({0.0, 0.0});
    REQUIRE(back);
    CHECK(path_between(center, *back).distance_m < 1e-6);
    const Position antipode =
        place_at(-center.latitude_deg(), center.longitude_deg() + 180.0 > 180.0
                                             ? center.longitude_deg() - 180.0
                                             : center.longitude_deg() + 180.0);
    CHECK_FALSE(plane->to_plane(antipode));
    CHECK_FALSE(plane->to_earth({Projection::kFarthestM, 1.0e5}));
    CHECK_FALSE(plane->to_earth({std::nan(""), 0.0}));
  }
  const Position center = place_at(44.0, -121.0);
  const auto plane = Projection::around(center);
  CHECK(plane->to_plane(destination(center, Bearing<True>::degrees(30.0), 9'999e3)));
  CHECK_FALSE(plane->to_plane(destination(center, Bearing<True>::degrees(30.0), 10'001e3)));
}
