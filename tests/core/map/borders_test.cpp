#include "core/map/borders.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/assets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

using namespace mastwise;
using map::BorderLine;
using map::Borders;
using map::LineKind;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// The distance from a position to the nearest line of a kind, in meters, on the plane around it.
double nearest_m(LineKind kind, Position position) {
  const auto plane = map::Projection::around(position);
  REQUIRE(plane);
  double nearest = std::numeric_limits<double>::infinity();
  for (const auto& line : test::borders().on_plane(*plane, 60e3)) {
    if (line.kind != kind) continue;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      const auto [east, north] = line.points[i - 1];
      const double dx = line.points[i].east_m - east, dy = line.points[i].north_m - north;
      const double length2 = dx * dx + dy * dy;
      const double t = length2 > 0 ? std::clamp(-(east * dx + north * dy) / length2, 0.0, 1.0) : 0;
      nearest = std::min(nearest, std::hypot(east + t * dx, north + t * dy));
    }
  }
  return nearest;
}

}  // namespace

TEST_CASE("borders are at their treaty lines", "[map]") {
  // The Convention of 1818: the 49th parallel from the Lake of the Woods to the Rocky Mountains.
  // The monuments are up to some 250 m off it.
  for (const double longitude_deg : {-120.0, -110.5, -104.0, -97.0}) {
    INFO(longitude_deg);
    CHECK(nearest_m(LineKind::CountryBorder, at(49.0, longitude_deg)) < 1'000.0);
  }
  // Four Corners: NGS monument AD9256, 36 59 56.31532 N, 109 2 42.62019 W (from memory).
  CHECK(nearest_m(LineKind::StateBorder, at(36.998976, -109.045172)) < 1'500.0);
  // 42 N between Oregon and Nevada, by the Adams-Onis treaty of 1819.
  CHECK(nearest_m(LineKind::StateBorder, at(42.0, -118.5)) < 1'500.0);
  // Kansas and Nebraska: 40 N, Kansas-Nebraska Act of 1854.
  CHECK(nearest_m(LineKind::StateBorder, at(40.0, -98.0)) < 1'500.0);
}

TEST_CASE("coasts and lake shores are where the land ends", "[map]") {
  // Positions of capes and harbors from memory, for a coast at 1:10 million: 3 km.
  CHECK(nearest_m(LineKind::Coast, at(50.0657, -5.7148)) < 3e3);        // Land's End
  CHECK(nearest_m(LineKind::Coast, at(-34.3568, 18.4740)) < 3e3);       // Cape of Good Hope
  CHECK(nearest_m(LineKind::Coast, at(40.4402, -124.4096)) < 3e3);      // Cape Mendocino
  CHECK(nearest_m(LineKind::LakeShore, at(41.8917, -87.6086)) < 5e3);   // Navy Pier, Chicago
  CHECK(nearest_m(LineKind::LakeShore, at(46.7867, -92.0910)) < 8e3);   // Duluth's canal
  CHECK(nearest_m(LineKind::LakeShore, at(43.6380, -79.3790)) < 3e3);   // Toronto's harbor
  CHECK(nearest_m(LineKind::LakeShore, at(44.4757, -73.2230)) < 3e3);   // Burlington, Vermont
  CHECK(nearest_m(LineKind::LakeShore, at(40.7472, -112.1870)) < 4e3);  // Great Salt Lake, Saltair
  CHECK(nearest_m(LineKind::LakeShore, at(46.2070, 6.1560)) < 3e3);     // Geneva's fountain
  CHECK(nearest_m(LineKind::LakeShore, at(-38.6880, 176.0720)) < 3e3);  // Taupo's boat harbor
  CHECK(nearest_m(LineKind::LakeShore, at(0.0450, 32.4720)) < 3e3);     // Entebbe's pier
  // Far inland there are none.
  CHECK(nearest_m(LineKind::Coast, at(39.0, -98.0)) > 50e3);
  CHECK(nearest_m(LineKind::LakeShore, at(37.4, -101.5)) > 50e3);  // southwest Kansas
}

TEST_CASE("no line runs along or across the antimeridian for a whole map", "[map]") {
  for (const Position center : {at(68.0, 180.0), at(-17.0, 180.0), at(66.0, -175.0)}) {
    const auto plane = map::Projection::around(center);
    REQUIRE(plane);
    const auto lines = test::borders().on_plane(*plane, 300e3);
    CHECK_FALSE(lines.empty());
    for (const auto& line : lines) {
      for (std::size_t i = 1; i < line.points.size(); ++i) {
        const double step_m = std::hypot(line.points[i].east_m - line.points[i - 1].east_m,
                                         line.points[i].north_m - line.points[i - 1].north_m);
        if (step_m > 60e3) FAIL_CHECK(line.points[i].east_m << " " << line.points[i].north_m);
      }
    }
  }
}

TEST_CASE("a circle returns every line that enters it", "[map]") {
  const auto everything = test::borders().within(at(0.0, 0.0), 20.1e6);
  CHECK(everything.size() > 5'000);
  for (const Position center : {at(44.06, -121.31), at(-17.0, 179.9), at(80.0, 20.0)}) {
    constexpr double kRadiusM = 400e3;
    const auto reaches = [&](const BorderLine& line) {
      return std::any_of(line.points.begin(), line.points.end(), [&](const Position& point) {
        // 400 km are less than 4 degrees of latitude.
        return std::fabs(point.latitude_deg() - center.latitude_deg()) < 4.0 &&
               path_between(center, point).distance_m <= kRadiusM;
      });
    };
    const auto wanted = std::count_if(everything.begin(), everything.end(), reaches);
    const auto found = test::borders().within(center, kRadiusM);
    CHECK(wanted > 0);
    CHECK(std::count_if(found.begin(), found.end(), reaches) == wanted);
    CHECK(found.size() < everything.size() / 4);
  }
}

TEST_CASE("damaged borders are refused", "[map]") {
  const auto whole = test::borders_bytes();
  const auto refused = [](std::vector<std::byte> bytes, const std::string& part) {
    const auto read = Borders::load(bytes);
    REQUIRE_FALSE(read);
    INFO(read.error().message());
    CHECK(read.error().message().find(part) != std::string::npos);
  };
  refused({}, "not a borders file");
  refused({whole.begin(), whole.end() - 1}, "bytes instead of");
  auto other = whole;
  other[7] = std::byte{'2'};
  refused(other, "not a borders file");
  constexpr std::size_t kFirstRow = 16;
  auto no_kind = whole;
  no_kind[kFirstRow] = std::byte{4};
  refused(no_kind, "line 0");
  auto one_point = whole;
  one_point[kFirstRow + 1] = std::byte{1};
  refused(one_point, "line 0");
  auto no_end = whole;
  for (std::size_t i = 1; i < 9; ++i) no_end[no_end.size() - i] = std::byte{0xFF};
  refused(no_end, "cannot be read");
}
