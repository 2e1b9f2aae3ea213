#include "core/geo/paper_map.hpp"

#include "core/geo/geodesic.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

constexpr double kMile_m = 1609.344;  // international mile, by definition
const double kNaN = std::numeric_limits<double>::quiet_NaN();

Bearing<True> degrees(double value) {
  return Bearing<True>::degrees(value);
}
Position paper_at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

}  // namespace

// Source: arithmetic. 30 miles / 20 mm = 1.5 miles a millimeter = 2,414,016 mm of ground a mm.
TEST_CASE("a scale bar gives the length of a millimeter", "[paper-map]") {
  const auto scale = MapScale::from_bar(20.0, 30.0 * kMile_m);
  REQUIRE(scale);
  CHECK(scale->meters_per_mm() == Approx(1.5 * kMile_m));
  CHECK(scale->ratio() == Approx(2'414'016.0));
  CHECK(scale->mm_of(140.0 * kMile_m) == Approx(93.333).margin(0.001));
  const auto topographic = MapScale::from_ratio(250'000.0);
  REQUIRE(topographic);
  CHECK(topographic->meters_of(1.0) == Approx(250.0));
}

TEST_CASE("an impossible scale is refused with a remedy", "[paper-map]") {
  for (const double bad : {0.0, -20.0, kNaN, std::numeric_limits<double>::infinity()}) {
    INFO(bad);
    const auto no_length = MapScale::from_bar(bad, 30.0 * kMile_m);
    REQUIRE(!no_length);
    CHECK(!no_length.error().remedy.empty());
    CHECK(!MapScale::from_bar(20.0, bad));
    CHECK(!MapScale::from_ratio(bad));
  }
  CHECK(MapScale::from_bar(0.0, 100.0).error().message() ==
        "a scale bar of 0 mm has no length; measure the bar with the ruler and enter its "
        "millimeters");
  CHECK(!MapScale::from_bar(20.0, 1.0));
}

// Source: atan(sqrt(2) 0.5 / length) by hand: 2.025 degrees over 20 mm, 0.418 over 97 mm.
TEST_CASE("a bearing by ruler is more certain over a longer line", "[paper-map]") {
  CHECK(ruler_bearing_error_deg(20.0) == Approx(2.025).margin(0.001));
  CHECK(ruler_bearing_error_deg(97.0) == Approx(0.418).margin(0.001));
  CHECK(ruler_bearing_error_deg(0.0) == 90.0);
}

TEST_CASE("a position follows from a named place, direction and length", "[paper-map]") {
  const Position named = paper_at(44.0, -71.0);
  const MapScale scale = *MapScale::from_bar(20.0, 30.0 * kMile_m);
  const auto found = from_named_place(named, degrees(45.0), 8.0, scale);
  REQUIRE(found);
  const PathBetween way = path_between(named, found->position);
  CHECK(way.distance_m == Approx(12.0 * kMile_m));
  CHECK(way.bearing.degrees() == Approx(45.0));
  // sqrt(2) 0.5 mm along the line and as much across it: 1 mm, 1.5 miles.
  CHECK(found->error_m == Approx(1.5 * kMile_m));
  // "North-east" as a word is uncertain by 11.25 degrees: 8 mm tan(11.25) = 1.591 mm across.
  const auto by_word = from_named_place(named, degrees(45.0), 8.0, scale, 11.25);
  REQUIRE(by_word);
  CHECK(by_word->error_m == Approx(std::hypot(0.7071, 1.5913) * 1.5 * kMile_m).epsilon(1e-3));
  CHECK(!from_named_place(named, degrees(45.0), 0.0, scale));
  CHECK(!from_named_place(named, degrees(45.0), kNaN, scale));
  CHECK(!from_named_place(named, degrees(45.0), 8.0, scale, 90.0));
}

// Source: WGS84 (NGA STND.0036): a degree of latitude from 44 to 45 N is 111.1 km, and a degree of
// longitude at 44.5 N 79.5 km: (pi / 180) a cos(lat) / sqrt(1 - e^2 sin^2(lat)).
TEST_CASE("a position follows from meridians and parallels", "[paper-map]") {
  const BetweenLines meridians{-72.0, -71.0, 79.5, 39.75};
  const BetweenLines parallels{44.0, 45.0, 111.1, 55.55};
  const auto found = from_graticule(meridians, parallels);
  REQUIRE(found);
  CHECK(found->position.longitude_deg() == Approx(-71.5).margin(1e-9));
  // The middle by length: the degree's northern half is longer by 3 m in 55 km.
  CHECK(found->position.latitude_deg() == Approx(44.5).margin(3e-5));
  CHECK(found->position.latitude_deg() > 44.5);
  // About 1:1,000,000 both ways: 1 km a mm; each way sqrt(2) 0.5 mm sqrt(1 + 0.25).
  CHECK(found->error_m == Approx(1000.0 * std::sqrt(1.25)).epsilon(0.002));
}

TEST_CASE("a graticule works from either side and across the date line", "[paper-map]") {
  const auto from_east = from_graticule({-71.0, -72.0, 80.0, 20.0}, {45.0, 44.0, 111.0, 111.0});
  REQUIRE(from_east);
  CHECK(from_east->position.longitude_deg() == Approx(-71.25));
  CHECK(from_east->position.latitude_deg() == Approx(44.0));
  const auto date_line = from_graticule({179.0, -179.0, 40.0, 30.0}, {-18.0, -17.0, 22.0, -11.0});
  REQUIRE(date_line);
  CHECK(date_line->position.longitude_deg() == Approx(-179.5));
  CHECK(date_line->position.latitude_deg() == Approx(-18.5).margin(1e-4));
}

TEST_CASE("an impossible graticule is refused with a remedy", "[paper-map]") {
  const BetweenLines meridians{-72.0, -71.0, 80.0, 40.0};
  const BetweenLines parallels{44.0, 45.0, 111.0, 55.0};
  const auto refused = [](const BetweenLines& first, const BetweenLines& second) {
    const auto found = from_graticule(first, second);
    return !found && !found.error().remedy.empty();
  };
  CHECK(!refused(meridians, parallels));
  CHECK(refused({-72.0, -72.0, 80.0, 40.0}, parallels));
  CHECK(refused({0.0, 180.0, 80.0, 40.0}, parallels));
  CHECK(refused({-190.0, -71.0, 80.0, 40.0}, parallels));
  CHECK(refused({-72.0, -71.0, 0.0, 40.0}, parallels));
  CHECK(refused({-72.0, -71.0, -80.0, 40.0}, parallels));
  CHECK(refused({-72.0, -71.0, 80.0, 161.0}, parallels));
  CHECK(refused({-72.0, kNaN, 80.0, 40.0}, parallels));
  CHECK(refused(meridians, {44.0, 44.0, 111.0, 55.0}));
  CHECK(refused(meridians, {44.0, 91.0, 111.0, 55.0}));
  CHECK(refused(meridians, {44.0, 45.0, 111.0, kNaN}));
}

// Source: right triangles by hand: 100 mm at 30 degrees lead 50 mm right and 86.603 mm up.
TEST_CASE("the ruler line follows the heading", "[paper-map]") {
  const MapScale scale = *MapScale::from_ratio(1'000'000.0);
  const PaperSheet sheet{
      .width_mm = 400.0, .height_mm = 300.0, .stop_right_mm = 100.0, .stop_up_mm = 50.0};
  const auto line = ruler_line(sheet, scale, degrees(30.0), 97'000.0);
  REQUIRE(line);
  CHECK(line->from_upright.degrees() == Approx(30.0));
  CHECK(line->right_per_100_mm == Approx(50.0));
  CHECK(line->up_per_100_mm == Approx(86.603).margin(0.001));
  CHECK(line->length_mm == Approx(97.0));
  CHECK(line->bearing_error_deg == Approx(0.418).margin(0.001));
  CHECK(!line->edge);
}

TEST_CASE("the ruler line ends where it leaves the sheet", "[paper-map]") {
  const MapScale scale = *MapScale::from_ratio(1'000'000.0);
  PaperSheet sheet{
      .width_mm = 400.0, .height_mm = 300.0, .stop_right_mm = 100.0, .stop_up_mm = 50.0};
  const auto beyond = ruler_line(sheet, scale, degrees(225.0), 225'000.0);
  REQUIRE(beyond);
  REQUIRE(beyond->edge);
  CHECK(beyond->edge->right_mm == Approx(50.0));
  CHECK(beyond->edge->up_mm == Approx(0.0).margin(1e-9));
  CHECK(beyond->edge->from_stop_mm == Approx(50.0 * std::sqrt(2.0)));
  CHECK(beyond->bearing_error_deg == Approx(ruler_bearing_error_deg(50.0 * std::sqrt(2.0))));
  const auto due_east = ruler_line(sheet, scale, degrees(90.0), 1'000'000.0);
  REQUIRE(due_east);
  REQUIRE(due_east->edge);
  CHECK(due_east->edge->right_mm == Approx(400.0));
  CHECK(due_east->edge->from_stop_mm == Approx(300.0));
  // The upright points 2 degrees east of north here: the same bearing is 2 degrees less from it.
  sheet.upright = Convergence::east_deg(2.0);
  const auto tilted = ruler_line(sheet, scale, degrees(30.0), 97'000.0);
  REQUIRE(tilted);
  CHECK(tilted->from_upright.degrees() == Approx(28.0));
}

TEST_CASE("a ruler line without a sheet is refused with a remedy", "[paper-map]") {
  const MapScale scale = *MapScale::from_ratio(1'000'000.0);
  const PaperSheet sheet{
      .width_mm = 400.0, .height_mm = 300.0, .stop_right_mm = 100.0, .stop_up_mm = 50.0};
  CHECK(ruler_line(sheet, scale, degrees(30.0), 1000.0));
  CHECK(!ruler_line(sheet, scale, degrees(30.0), 0.0));
  PaperSheet flat = sheet;
  flat.height_mm = 0.0;
  CHECK(!ruler_line(flat, scale, degrees(30.0), 1000.0));
  PaperSheet astray = sheet;
  astray.stop_right_mm = 401.0;
  CHECK(!ruler_line(astray, scale, degrees(30.0), 1000.0));
  astray.stop_right_mm = kNaN;
  CHECK(!ruler_line(astray, scale, degrees(30.0), 1000.0));
}
