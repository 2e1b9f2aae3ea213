#include "core/terrain/squares.hpp"

#include <numbers>

#include <catch2/catch.hpp>

using namespace mastwise;
using terrain::NearSquare;
using terrain::squares_near;
using terrain::TileCell;

namespace {

Position at(double lat_deg, double lon_deg) {
  return *Position::at_deg(lat_deg, lon_deg);
}

double whole_km2(const std::vector<NearSquare>& squares) {
  double whole = 0.0;
  for (const NearSquare& square : squares) whole += square.near_km2;
  return whole;
}

}  // namespace

// A circle of 145 km has pi 145^2 = 66,052 km2. Along a meridian of 110.6 km a degree it
// reaches 1.31 degrees: from 43.5 N the rows 42 to 44; and 1.31 / cos(43.5) = 1.81 degrees of
// longitude.
TEST_CASE("the squares around a stop cover a circle", "[terrain]") {
  const auto squares = squares_near(std::vector{at(43.5, -118.5)}, 145e3);
  CHECK(whole_km2(squares) == Approx(66'052.0).epsilon(0.01));
  for (const NearSquare& square : squares) {
    CHECK(square.cell.south_deg >= 42);
    CHECK(square.cell.south_deg <= 44);
    CHECK(square.cell.west_deg >= -121);
    CHECK(square.cell.west_deg <= -117);
    CHECK(square.near_km2 <= 111.2 * 111.2);
  }
  const auto own = std::find_if(squares.begin(), squares.end(), [](const NearSquare& one) {
    return one.cell == TileCell{43, -119};
  });
  REQUIRE(own != squares.end());
  // The whole square: 111.19^2 cos(43.5) = 8,968 km2 [sphere of 6,371 km].
  CHECK(own->near_km2 == Approx(8'968.0).epsilon(0.002));
}

// A capsule: pi r^2 + 2 r length. Four degrees of the meridian from 40 to 44 N are 444.2 km
// [WGS84: 111.05 km a degree there].
TEST_CASE("the squares along a way cover a strip with round ends", "[terrain]") {
  const auto squares = squares_near(std::vector{at(40.0, 10.5), at(44.0, 10.5)}, 145e3);
  const double capsule_km2 = std::numbers::pi * 145.0 * 145.0 + 2.0 * 145.0 * 444.2;
  CHECK(whole_km2(squares) == Approx(capsule_km2).epsilon(0.015));
}

TEST_CASE("the squares go on beyond the date line and stay on the globe at a pole", "[terrain]") {
  const auto across = squares_near(std::vector{at(0.5, 179.9)}, 145e3);
  const auto has = [&](int south, int west) {
    return std::any_of(across.begin(), across.end(), [&](const NearSquare& one) {
      return one.cell == TileCell{south, west};
    });
  };
  CHECK(has(0, 179));
  CHECK(has(0, -180));
  // 1.1 % from places a tenth of a degree apart (counted on a sphere by another program), 0.5 %
  // from the sphere's longer degrees of latitude at the equator.
  CHECK(whole_km2(across) == Approx(std::numbers::pi * 145.0 * 145.0).epsilon(0.02));
  for (const NearSquare& square : squares_near(std::vector{at(89.9, 0.0)}, 50e3)) {
    CHECK(square.cell.south_deg == 89);
    CHECK(square.cell.west_deg >= -180);
    CHECK(square.cell.west_deg <= 179);
  }
  CHECK(squares_near({}, 50e3).empty());
}
