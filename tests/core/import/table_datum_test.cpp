#include "core/import/table_datum.hpp"

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

double distance_m(const Position& a, double latitude_deg, double longitude_deg) {
  double meters = 0.0;
  GeographicLib::Geodesic::WGS84().Inverse(a.latitude_deg(), a.longitude_deg(), latitude_deg,
                                           longitude_deg, meters);
  return meters;
}

struct Point {
  double latitude_deg, longitude_deg;
};

// NAD27 to WGS84 by the mean shift of the contiguous United States, -8 m, 160 m, 176 m, on the
// Clarke ellipsoid of 1866 [DMA TR 8350.2, appendix B; figures from memory].
Point mean_shift(Point nad27) {
  const GeographicLib::Geocentric clarke(6378206.4, 1.0 / 294.9786982);
  double x = 0.0, y = 0.0, z = 0.0, height = 0.0;
  clarke.Forward(nad27.latitude_deg, nad27.longitude_deg, 0.0, x, y, z);
  Point wgs84{};
  GeographicLib::Geocentric::WGS84().Reverse(x - 8.0, y + 160.0, z + 176.0, wgs84.latitude_deg,
                                             wgs84.longitude_deg, height);
  return wgs84;
}

}  // namespace

TEST_CASE("WGS84 coordinates stay unchanged and are checked") {
  const auto shift = DatumShift::to_wgs84(Datum::wgs84);
  REQUIRE(shift);
  CHECK(*shift->shift(44.5, -71.5) == *Position::at_deg(44.5, -71.5));
  CHECK_FALSE(shift->shift(94.5, -71.5));
}

// EPSG:1188, the null shift of the mainland.
TEST_CASE("NAD83 moves by less than a meter on the mainland and by a few on islands") {
  const auto shift = DatumShift::to_wgs84(Datum::nad83);
  REQUIRE(shift);
  for (const Point point :
       {Point{44.352778, -71.736944}, Point{61.3, -149.5}, Point{25.8, -80.2}}) {
    CHECK(distance_m(*shift->shift(point.latitude_deg, point.longitude_deg), point.latitude_deg,
                     point.longitude_deg) < 1.0);
  }
  for (const Point point : {Point{19.7, -155.0}, Point{18.3, -66.0}, Point{13.5, 144.8}}) {
    CHECK(distance_m(*shift->shift(point.latitude_deg, point.longitude_deg), point.latitude_deg,
                     point.longitude_deg) < 5.0);
  }
}

TEST_CASE("NAD27 moves by tens of meters as published, and is refused without a known shift") {
  const auto shift = DatumShift::to_wgs84(Datum::nad27);
  REQUIRE(shift);
  for (const Point point :
       {Point{44.352778, -71.736944}, Point{42.5, -118.5}, Point{30.0, -97.0}}) {
    INFO(point.latitude_deg << ", " << point.longitude_deg);
    const auto shifted = shift->shift(point.latitude_deg, point.longitude_deg);
    REQUIRE(shifted);
    CHECK(distance_m(*shifted, point.latitude_deg, point.longitude_deg) > 20.0);
    const Point expected = mean_shift(point);
    // The mean shift itself is stated good to some 10 m.
    CHECK(distance_m(*shifted, expected.latitude_deg, expected.longitude_deg) < 20.0);
  }
  CHECK_FALSE(shift->shift(-33.0, 151.0));
  CHECK_FALSE(shift->shift(91.0, 0.0));
}
