#include "app/map/draw_bitmaps.hpp"
#include "app/map/state.hpp"
#include "app/session/model.hpp"
#include "core/geo/geodesic.hpp"

#include <cmath>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

MapView some_view(std::mt19937& random) {
  std::uniform_real_distribution<double> meters(-50e3, 50e3), scale(0.5, 2000.0), turn(0.0, 360.0);
  return {.middle = {meters(random), meters(random)},
          .meters_per_unit = scale(random),
          .up = Bearing<True>::degrees(turn(random))};
}

constexpr double kUnit = 1e-6;  // of the screen

}  // namespace

TEST_CASE("the map converts between screen and plane as worked by hand") {
  const MapView north{.meters_per_unit = 10.0};
  CHECK(offset_of(north, {1000.0, 0.0}).right == Approx(100.0));
  CHECK(offset_of(north, {0.0, 1000.0}).down == Approx(-100.0));
  // With east at the top, places to the east are above and places to the north are to the left.
  const MapView east{.meters_per_unit = 10.0, .up = Bearing<True>::degrees(90.0)};
  CHECK(offset_of(east, {1000.0, 0.0}).down == Approx(-100.0));
  CHECK(offset_of(east, {0.0, 1000.0}).right == Approx(-100.0));
}

TEST_CASE("a place under a finger converts to the plane and back") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> units(-800.0, 800.0);
  for (int i = 0; i < 200; ++i) {
    const MapView view = some_view(random);
    const MapOffset offset{units(random), units(random)};
    const MapOffset back = offset_of(view, point_at(view, offset));
    CHECK(back.right == Approx(offset.right).margin(kUnit));
    CHECK(back.down == Approx(offset.down).margin(kUnit));
  }
}

TEST_CASE("fingers keep their places on the map while they drag, pinch and turn it") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> units(-400.0, 400.0), scale(0.8, 1.25), turn(-30.0, 30.0);
  for (int i = 0; i < 200; ++i) {
    MapView view = some_view(random);
    view.meters_per_unit = 100.0;  // away from the ends, where the scale stays
    const MapOffset now{units(random), units(random)};
    const MapMove move{.drag = {units(random), units(random)},
                       .scale = scale(random),
                       .turn_deg = turn(random),
                       .about = now};
    const MapOffset before{now.right - move.drag.right, now.down - move.drag.down};
    const map::PlanePoint held = point_at(view, before);
    const MapView after = moved(view, move);
    CHECK(offset_of(after, held).right == Approx(now.right).margin(kUnit));
    CHECK(offset_of(after, held).down == Approx(now.down).margin(kUnit));
    CHECK(after.meters_per_unit == Approx(view.meters_per_unit / move.scale));
  }
  // Turned to the right, the top moves to the right.
  const MapView turned = moved({}, {.turn_deg = 20.0});
  CHECK(offset_of(turned, {0.0, 10e3}).right > 0.0);
}

TEST_CASE("the map's zoom has limits") {
  CHECK(moved({}, {.scale = 1e9}).meters_per_unit == kNearestMap);
  CHECK(moved({}, {.scale = 1e-9}).meters_per_unit == kFarthestMap);
  const MapView far = moved({}, {.drag = {1e9, 0.0}});
  CHECK(std::hypot(far.middle.east_m, far.middle.north_m) < 2'001e3);
}

// PROJ's azimuthal equidistant plane is the outside reference.
TEST_CASE("a station by distance and bearing is where the projection puts its position") {
  const Position stop = *Position::at_deg(44.435217, -71.675993);
  const auto projection = map::Projection::around(stop);
  REQUIRE(projection);
  std::mt19937 random(3);
  std::uniform_real_distribution<double> far(0.0, 400e3), round(0.0, 360.0);
  for (int i = 0; i < 100; ++i) {
    const Position station = destination(stop, Bearing<True>::degrees(round(random)), far(random));
    const PathBetween path = path_between(stop, station);
    const map::PlanePoint point = plane_point(path.distance_m, path.bearing);
    const auto projected = projection->to_plane(station);
    REQUIRE(projected);
    CHECK(point.east_m == Approx(projected->east_m).margin(0.01));
    CHECK(point.north_m == Approx(projected->north_m).margin(0.01));
  }
}

TEST_CASE("unknown ground is not colored by height") {
  const map::Relief relief{.grid = {3, 1, 30.0}, .shade = {0, 181, 255}, .band = {0, 1, 13}};
  for (const ui::Look night : {ui::Look::Day, ui::Look::Night}) {
    const ui::Bitmap bitmap = ui::relief_bitmap(relief, night);
    REQUIRE(bitmap.rgba.size() == 3);
    CHECK(bitmap.rgba[0] != bitmap.rgba[1]);
    CHECK(bitmap.rgba[0] != bitmap.rgba[2]);
    CHECK(bitmap.rgba[1] != bitmap.rgba[2]);
  }
}

// Labels have plates; rings, coasts and the rig are drawn on the ground.
// Source of the least contrast: WCAG 2.2, 1.4.11, 3 for marks that carry meaning.
TEST_CASE("the rig and the beam stand out from any ground of the map") {
  for (const ui::Look night : {ui::Look::Day, ui::Look::Night}) {
    const auto [darkest, lightest] = ui::relief_extremes(night);
    for (const ui::Color ground : {darkest, lightest}) {
      CHECK(ui::contrast_ratio(ui::theme(night).ink, ground) >= 3.0);
      CHECK(ui::contrast_ratio(ui::theme(night).accent, ground) >= 3.0);
      CHECK(ui::contrast_ratio(ui::theme(night).second_ink, ground) >= 3.0);
    }
  }
}

TEST_CASE("an area of unknown cells shows the ground below") {
  AreaSheet sheet;
  sheet.side = 2;
  sheet.percent = {AreaSheet::kUnknown, 0, 50, 99};
  const ui::Bitmap bitmap = ui::area_bitmap(sheet, ui::Look::Day);
  CHECK(bitmap.rgba[0] == 0);
  CHECK(bitmap.rgba[1] >> 24 > 0);
  CHECK(bitmap.rgba[1] != bitmap.rgba[3]);
}
