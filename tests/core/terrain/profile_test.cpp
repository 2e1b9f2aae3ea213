#include "core/terrain/profile.hpp"

#include "core/terrain/geodesic_track.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
#include <numbers>

#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>

namespace mastwise::terrain {
namespace {

using GeographicLib::Geodesic;

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// Whole meters at every sample of 3 and of 1 arc second.
double plane_m(double latitude_deg, double longitude_deg) {
  return 3600.0 * (latitude_deg - 45.0) + 3600.0 * (longitude_deg - 7.0);
}

test::HeightAt flat(double height_m) {
  return [height_m](double, double) { return height_m; };
}

std::size_t points_of(double distance_m, double nominal_spacing_m) {
  return static_cast<std::size_t>(std::ceil(distance_m / nominal_spacing_m)) + 1;
}

// The largest distance between the track's points and the geodesic.
double largest_departure_m(Position from, Position to, std::size_t intervals) {
  GeodesicTrack track(from, to);
  track.cut(intervals);
  const auto line = Geodesic::WGS84().InverseLine(from.latitude_deg(), from.longitude_deg(),
                                                  to.latitude_deg(), to.longitude_deg());
  double largest_m = 0.0;
  for (TrackSegment segment; track.next(segment);) {
    for (std::size_t i = 0; i <= segment.intervals; ++i) {
      const auto point =
          segment.at(static_cast<double>(i) / static_cast<double>(segment.intervals));
      double latitude_deg = 0.0;
      double longitude_deg = 0.0;
      line.Position(line.Distance() * static_cast<double>(segment.first_point + i) /
                        static_cast<double>(intervals),
                    latitude_deg, longitude_deg);
      double departure_m = 0.0;
      Geodesic::WGS84().Inverse(latitude_deg, longitude_deg, point.north_deg - 90.0,
                                std::remainder(point.east_deg - 540.0, 360.0), departure_m);
      largest_m = std::max(largest_m, departure_m);
    }
  }
  return largest_m;
}

// The largest distance between a geodesic and the great circle through the same geographic
// coordinates on a sphere, at equal fractions of the way.
double great_circle_departure_m(Position from, Position to) {
  const double radian = std::numbers::pi / 180.0;
  const auto direction = [radian](Position position) {
    const double latitude = position.latitude_deg() * radian;
    const double longitude = position.longitude_deg() * radian;
    return std::array<double, 3>{std::cos(latitude) * std::cos(longitude),
                                 std::cos(latitude) * std::sin(longitude), std::sin(latitude)};
  };
  const auto a = direction(from);
  const auto b = direction(to);
  const double angle = std::acos(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
  const auto line = Geodesic::WGS84().InverseLine(from.latitude_deg(), from.longitude_deg(),
                                                  to.latitude_deg(), to.longitude_deg());
  double largest_m = 0.0;
  for (double fraction = 0.02; fraction < 0.99; fraction += 0.02) {
    const double wa = std::sin((1.0 - fraction) * angle) / std::sin(angle);
    const double wb = std::sin(fraction * angle) / std::sin(angle);
    const std::array<double, 3> p{wa * a[0] + wb * b[0], wa * a[1] + wb * b[1],
                                  wa * a[2] + wb * b[2]};
    double latitude_deg = 0.0;
    double longitude_deg = 0.0;
    line.Position(fraction * line.Distance(), latitude_deg, longitude_deg);
    double departure_m = 0.0;
    Geodesic::WGS84().Inverse(std::atan2(p[2], std::hypot(p[0], p[1])) / radian,
                              std::atan2(p[1], p[0]) / radian, latitude_deg, longitude_deg,
                              departure_m);
    largest_m = std::max(largest_m, departure_m);
  }
  return largest_m;
}

}  // namespace

TEST_CASE("the track stays within 0.01 m of the WGS84 geodesic") {
  const struct {
    Position from, to;
  } paths[] = {
      {at(44.35, -71.74), at(44.43, -71.68)}, {at(44.35, -71.74), at(46.9, -70.5)},
      {at(0.0, 10.0), at(0.0, 13.0)},         {at(-1.0, 10.0), at(1.5, 12.0)},
      {at(60.0, 10.0), at(59.5, 15.0)},       {at(-55.9, -68.0), at(-53.5, -68.2)},
      {at(70.0, 25.0), at(70.1, 33.0)},       {at(20.0, 179.0), at(21.0, -178.5)},
      {at(84.0, 0.0), at(84.0, 20.0)},        {at(89.0, 0.0), at(89.0, 170.0)},
      {at(89.0, 0.0), at(89.0, 180.0)},       {at(-89.99, 5.0), at(-89.0, -100.0)},
      {at(40.0, -74.0), at(51.5, 0.0)},       {at(90.0, 0.0), at(88.5, 30.0)},
  };
  for (const auto& path : paths) {
    INFO(path.from.latitude_deg() << " " << path.from.longitude_deg() << " to "
                                  << path.to.latitude_deg() << " " << path.to.longitude_deg());
    const GeodesicTrack track(path.from, path.to);
    const auto intervals = static_cast<std::size_t>(std::ceil(track.distance_m() / 900.0));
    CHECK(largest_departure_m(path.from, path.to, intervals) < 0.01);
  }
}

TEST_CASE("a great circle departs from the geodesic by tens of meters") {
  // Over 300 km at middle latitudes; the sphere uses geographic latitudes.
  double largest_m = 0.0;
  for (const double latitude_deg : {0.0, 15.0, 30.0, 45.0, 60.0}) {
    for (double azimuth_deg = 0.0; azimuth_deg < 360.0; azimuth_deg += 15.0) {
      double latitude = 0.0;
      double longitude = 0.0;
      Geodesic::WGS84().Direct(latitude_deg, 10.0, azimuth_deg, 300'000.0, latitude, longitude);
      largest_m = std::max(
          largest_m, great_circle_departure_m(at(latitude_deg, 10.0), at(latitude, longitude)));
    }
  }
  std::cout << "geodesic against great circle over 300 km: " << largest_m << " m\n";
  CHECK(largest_m > 10.0);
  CHECK(largest_m < 100.0);
}

TEST_CASE("distance and bearings of a profile match the geodesic") {
  // README of the reference data: 207.950 degrees true at 10,368.18 m from the recorded spot.
  PathProfile profile;
  cut_profile(TileSet(), at(44.435217, -71.675993), at(44.352778, -71.736944), profile);
  CHECK(profile.distance_m == Approx(10'368.18).margin(0.01));
  CHECK(profile.bearing_at_start.degrees() == Approx(207.950).margin(0.0005));
  CHECK(profile.bearing_back.degrees() == Approx(27.907).margin(0.01));
}

TEST_CASE("a profile over a plane reproduces it across tile edges and both resolutions") {
  for (const int side : {1201, 3601}) {
    if (side == 3601 && test::kSanitized) return;
    TileSet tiles;
    for (const int south : {44, 45}) {
      for (const int west : {6, 7, 8}) {
        tiles.add(test::made_tile({south, west}, side, plane_m));
      }
    }
    PathProfile profile;
    const Position from = at(44.9, 6.95);
    const Position to = at(45.3, 8.1);
    cut_profile(tiles, from, to, profile);
    CHECK(profile.complete());
    CHECK(profile.gaps.empty());
    CHECK(profile.coverage() == 1.0);
    const double nominal_m = side == 1201 ? 90.0 : 30.0;
    CHECK(profile.heights_m.size() == points_of(profile.distance_m, nominal_m));
    CHECK(profile.spacing_m * static_cast<double>(profile.heights_m.size() - 1) ==
          Approx(profile.distance_m));
    const auto line = Geodesic::WGS84().InverseLine(from.latitude_deg(), from.longitude_deg(),
                                                    to.latitude_deg(), to.longitude_deg());
    double largest_m = 0.0;
    for (std::size_t i = 0; i < profile.heights_m.size(); ++i) {
      double latitude_deg = 0.0;
      double longitude_deg = 0.0;
      line.Position(profile.spacing_m * static_cast<double>(i), latitude_deg, longitude_deg);
      largest_m = std::max(largest_m,
                           std::fabs(profile.heights_m[i] - plane_m(latitude_deg, longitude_deg)));
    }
    // The plane falls at most 0.05 m a meter: 0.01 m of track is 0.5 mm of height.
    CHECK(largest_m < 0.0005);
  }
}

TEST_CASE("where fine and coarse tiles meet the finer spacing is used, unless 90 m is requested") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 6}, 1201, plane_m));
  tiles.add(test::made_tile({45, 7}, 3601, plane_m));
  PathProfile profile;
  cut_profile(tiles, at(45.5, 6.5), at(45.5, 7.5), profile);
  CHECK(profile.heights_m.size() == points_of(profile.distance_m, 30.0));
  CHECK(profile.complete());
  cut_profile(tiles, at(45.5, 6.5), at(45.5, 6.9), profile);
  CHECK(profile.heights_m.size() == points_of(profile.distance_m, 90.0));
  cut_profile(tiles, at(45.5, 6.5), at(45.5, 7.5), profile, ProfileDetail::k90m);
  CHECK(profile.heights_m.size() == points_of(profile.distance_m, 90.0));
  CHECK(profile.complete());
}

TEST_CASE("a missing tile is reported by its length, and is not sea level") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, flat(200.0)));
  PathProfile profile;
  cut_profile(tiles, at(45.5, 7.5), at(45.5, 8.25), profile);
  REQUIRE(profile.gaps.size() == 1);
  CHECK(profile.gaps[0].cause == GapCause::kNoTile);
  CHECK_FALSE(profile.gaps[0].bridged);
  CHECK_FALSE(profile.complete());
  CHECK(profile.without_terrain_m() == Approx(profile.distance_m / 3.0).margin(90.0));
  CHECK(profile.coverage() == Approx(2.0 / 3.0).margin(0.002));
  CHECK(std::isnan(profile.heights_m.back()));
  CHECK(profile.heights_m.front() == 200.0);
  CHECK(profile.known_points() + profile.gaps[0].points == profile.heights_m.size());

  cut_profile(TileSet(), at(45.5, 7.5), at(45.5, 8.25), profile);
  CHECK(profile.coverage() == 0.0);
  CHECK(profile.without_terrain_m() == Approx(profile.distance_m));
  CHECK(profile.known_points() == 0);
}

TEST_CASE("a short void is bridged and reported, and a long one stays open") {
  const auto with_void = [](double width_deg) {
    return [width_deg](double latitude_deg, double longitude_deg) {
      const bool hole = longitude_deg > 7.5 - 1e-9 && longitude_deg < 7.5 + width_deg;
      return hole ? -32768.0 : plane_m(latitude_deg, longitude_deg);
    };
  };
  PathProfile profile;
  TileSet narrow;
  narrow.add(test::made_tile({45, 7}, 1201, with_void(0.5 / 1200.0)));
  cut_profile(narrow, at(45.2, 7.4), at(45.2, 7.6), profile);
  REQUIRE(profile.gaps.size() == 1);
  CHECK(profile.gaps[0].cause == GapCause::kVoid);
  CHECK(profile.gaps[0].bridged);
  CHECK(profile.complete());
  CHECK(profile.bridged_points() == profile.gaps[0].points);
  CHECK(profile.bridged_points() >= 1);
  CHECK(profile.coverage() == 1.0);
  for (std::size_t i = 0; i < profile.heights_m.size(); ++i) {
    const double fraction =
        static_cast<double>(i) / static_cast<double>(profile.heights_m.size() - 1);
    CHECK(profile.heights_m[i] == Approx(plane_m(45.2, 7.4 + 0.2 * fraction)).margin(1.0));
  }

  TileSet wide;
  wide.add(test::made_tile({45, 7}, 1201, with_void(8.5 / 1200.0)));
  cut_profile(wide, at(45.2, 7.4), at(45.2, 7.6), profile);
  REQUIRE(profile.gaps.size() == 1);
  CHECK_FALSE(profile.gaps[0].bridged);
  CHECK(profile.gaps[0].points > kLongestBridgePoints);
  CHECK_FALSE(profile.complete());
  CHECK(profile.without_terrain_m() ==
        Approx(static_cast<double>(profile.gaps[0].points) * profile.spacing_m));
}

TEST_CASE("an end in a void is not extrapolated") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, [](double latitude_deg, double longitude_deg) {
    return longitude_deg < 7.5 + 1e-9 ? -32768.0 : plane_m(latitude_deg, longitude_deg);
  }));
  PathProfile profile;
  cut_profile(tiles, at(45.2, 7.5), at(45.2, 7.6), profile);
  REQUIRE(profile.gaps.size() == 1);
  CHECK(profile.gaps[0].first_point == 0);
  CHECK_FALSE(profile.gaps[0].bridged);
  CHECK(std::isnan(profile.heights_m[0]));
}

TEST_CASE("profiles work over the antimeridian, the equator, along an edge and over the pole") {
  TileSet tiles;
  for (const int west : {179, -180}) {
    tiles.add(test::made_tile({-17, west}, 1201, flat(7.0)));
  }
  for (const int south : {-1, 0}) {
    tiles.add(test::made_tile({south, -1}, 1201, flat(8.0)));
  }
  for (const int west : {20, -160}) {
    tiles.add(test::made_tile({89, west}, 1201, flat(9.0)));
  }
  const struct {
    Position from, to;
    double height_m;
  } paths[] = {
      {at(-16.4, 179.8), at(-16.5, -179.7), 7.0},
      {at(-16.4, -179.8), at(-16.5, 179.7), 7.0},
      {at(-16.9, 180.0), at(-16.1, -180.0), 7.0},
      {at(-0.4, -0.4), at(0.4, -0.6), 8.0},
      // Only the tiles west of the prime meridian exist; it is their east edge.
      {at(-0.5, 0.0), at(0.5, 0.0), 8.0},
      {at(89.8, 20.5), at(89.8, -159.5), 9.0},
  };
  PathProfile profile;
  for (const auto& path : paths) {
    cut_profile(tiles, path.from, path.to, profile);
    INFO(path.from.longitude_deg() << " to " << path.to.longitude_deg());
    CHECK(profile.complete());
    CHECK(*std::min_element(profile.heights_m.begin(), profile.heights_m.end()) == path.height_m);
    CHECK(*std::max_element(profile.heights_m.begin(), profile.heights_m.end()) == path.height_m);
  }
}

TEST_CASE("a path of zero length has two equal points") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, flat(200.0)));
  PathProfile profile;
  cut_profile(tiles, at(45.5, 7.5), at(45.5, 7.5), profile);
  CHECK(profile.heights_m == std::vector<double>{200.0, 200.0});
  CHECK(profile.distance_m == 0.0);
  CHECK(profile.spacing_m == 0.0);
  CHECK(profile.coverage() == 1.0);
}

TEST_CASE("a reused profile buffer does not allocate") {
  TileSet tiles;
  tiles.add(test::made_tile({45, 7}, 1201, flat(200.0)));
  PathProfile profile;
  cut_profile(tiles, at(45.1, 7.1), at(45.9, 7.9), profile);
  const double* const heights = profile.heights_m.data();
  cut_profile(tiles, at(45.2, 7.1), at(45.8, 7.9), profile);
  CHECK(profile.heights_m.data() == heights);
}

}  // namespace mastwise::terrain
