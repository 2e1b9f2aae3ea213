#include "core/landcover/cover_profile.hpp"

#include "tests/support/made_cover.hpp"

#include <cmath>
#include <cstddef>
#include <memory>
#include <utility>

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/GeodesicLine.hpp>
#include <catch2/catch.hpp>

namespace mastwise::landcover {
namespace {

using terrain::PathProfile;
using terrain::TileCell;

// No terrain: the points are the same.
const terrain::TileSet kNoTerrain;

Position spot(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

// Patches of 40 areas, so that few points lie close to a border of classes.
CoverClass patches(int north, int east) {
  return static_cast<CoverClass>(1 + (north / 40 + 3 * (east / 40)) % (kCoverClasses - 1));
}

CoverSet cover_of(std::initializer_list<TileCell> cells) {
  CoverSet cover;
  for (const TileCell cell : cells) cover.add(test::made_cover(cell, patches));
  return cover;
}

// One tile for all cells.
class Everywhere : public CoverSource {
 public:
  explicit Everywhere(std::shared_ptr<const CoverTile> tile) : tile_(std::move(tile)) {}
  std::shared_ptr<const CoverTile> tile(TileCell) const override { return tile_; }

 private:
  std::shared_ptr<const CoverTile> tile_;
};

struct Agreement {
  std::size_t points = 0;
  std::size_t different = 0;
  std::size_t unknown = 0;
};

// The heights along a path against those at its points, each solved by GeographicLib alone.
Agreement along(const CoverSource& cover, Position from, Position to) {
  PathProfile profile;
  terrain::cut_profile(kNoTerrain, from, to, profile);
  std::vector<double> heights_m{1.0, 2.0};
  const std::size_t known = clutter_along(cover, profile, heights_m);
  REQUIRE(heights_m.size() == profile.heights_m.size());
  const auto line = GeographicLib::Geodesic::WGS84().InverseLine(
      from.latitude_deg(), from.longitude_deg(), to.latitude_deg(), to.longitude_deg());
  Agreement agreement{.points = heights_m.size()};
  for (std::size_t i = 0; i < heights_m.size(); ++i) {
    double latitude_deg = 0.0, longitude_deg = 0.0;
    line.Position(static_cast<double>(i) * profile.spacing_m, latitude_deg, longitude_deg);
    const double expected_m = added_height_m(class_at(cover, spot(latitude_deg, longitude_deg)));
    const bool same =
        expected_m == heights_m[i] || (std::isnan(expected_m) && std::isnan(heights_m[i]));
    agreement.different += same ? 0 : 1;
    agreement.unknown += std::isnan(heights_m[i]) ? 1 : 0;
  }
  CHECK(known + agreement.unknown == agreement.points);
  return agreement;
}

}  // namespace

TEST_CASE("clutter along a path is that of the classes at its points") {
  const CoverSet cover = cover_of({{44, -72}, {44, -71}, {45, -72}, {45, -71}});
  struct Path {
    Position from, to;
  };
  for (const Path& path : {Path{spot(44.435, -71.676), spot(45.2, -70.8)},
                           {spot(45.9, -71.9), spot(44.1, -70.1)},
                           {spot(44.5, -71.5), spot(44.5, -71.2)},
                           {spot(44.2, -71.0), spot(45.8, -71.0)}}) {
    const auto agreement = along(cover, path.from, path.to);
    CHECK(agreement.points > 250);
    CHECK(agreement.unknown == 0);
    // A point within 0.01 m of the geodesic may fall on the other side of a border.
    CHECK(agreement.different <= agreement.points / 500);
  }
}

TEST_CASE("clutter is unknown where a path leaves the tiles") {
  const CoverSet cover = cover_of({{44, -72}});
  const auto half = along(cover, spot(44.5, -71.5), spot(44.5, -70.5));
  CHECK(half.different == 0);
  CHECK(static_cast<double>(half.unknown) ==
        Approx(static_cast<double>(half.points) / 2).margin(2));
  const auto none = along(cover, spot(46.5, -71.5), spot(47.5, -70.5));
  CHECK(none.unknown == none.points);
  // Over the corner of a tile, both ends outside.
  const auto corner = along(cover, spot(44.8, -72.1), spot(45.1, -71.9));
  CHECK(corner.different == 0);
  CHECK(corner.unknown < corner.points);
}

TEST_CASE("clutter is known across the antimeridian and near a pole") {
  const auto fiji =
      along(cover_of({{-18, 179}, {-18, -180}}), spot(-17.2, 179.6), spot(-17.7, -179.5));
  CHECK(fiji.unknown == 0);
  CHECK(fiji.different <= fiji.points / 500);
  const Everywhere ring(test::made_cover({.south_deg = 89, .west_deg = 0},
                                         [](int, int) { return CoverClass::trees; }));
  const auto pole = along(ring, spot(89.6, 10.0), spot(89.7, -150.0));
  CHECK(pole.unknown == 0);
  CHECK(pole.different == 0);
}

TEST_CASE("a profile that was never cut has no clutter") {
  PathProfile profile;
  profile.heights_m = {1.0, 2.0, 3.0};
  std::vector<double> heights_m;
  CHECK(clutter_along(cover_of({{44, -72}}), profile, heights_m) == 0);
  REQUIRE(heights_m.size() == 3);
  CHECK(std::isnan(heights_m[1]));
}

}  // namespace mastwise::landcover
