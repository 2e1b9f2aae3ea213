#include "app/map/state.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise {
namespace {

constexpr double kFarthestMiddle_m = 2'000e3;

double radians(Bearing<True> bearing) {
  return bearing.degrees() * std::numbers::pi / 180.0;
}

}  // namespace

map::PlanePoint point_at(const MapView& view, MapOffset offset) {
  const double up = radians(view.up);
  const double right_m = offset.right * view.meters_per_unit;
  const double ahead_m = -offset.down * view.meters_per_unit;
  return {view.middle.east_m + right_m * std::cos(up) + ahead_m * std::sin(up),
          view.middle.north_m - right_m * std::sin(up) + ahead_m * std::cos(up)};
}

MapOffset offset_of(const MapView& view, map::PlanePoint point) {
  const double up = radians(view.up);
  const double east = (point.east_m - view.middle.east_m) / view.meters_per_unit;
  const double north = (point.north_m - view.middle.north_m) / view.meters_per_unit;
  return {east * std::cos(up) - north * std::sin(up), -east * std::sin(up) - north * std::cos(up)};
}

map::PlanePoint plane_point(double distance_m, Bearing<True> bearing) {
  return {distance_m * std::sin(radians(bearing)), distance_m * std::cos(radians(bearing))};
}

MapView moved(MapView view, const MapMove& move) {
  view.middle = point_at(view, {-move.drag.right, -move.drag.down});
  const map::PlanePoint held = point_at(view, move.about);
  view.meters_per_unit = std::clamp(view.meters_per_unit / move.scale, kNearestMap, kFarthestMap);
  view.up = view.up - Turn::clockwise_deg(move.turn_deg);
  const map::PlanePoint there = point_at(view, move.about);
  view.middle.east_m += held.east_m - there.east_m;
  view.middle.north_m += held.north_m - there.north_m;
  const double away_m = std::hypot(view.middle.east_m, view.middle.north_m);
  if (away_m > kFarthestMiddle_m) {
    view.middle.east_m *= kFarthestMiddle_m / away_m;
    view.middle.north_m *= kFarthestMiddle_m / away_m;
  }
  return view;
}

MapView around_stop(const MapView& view, double radius_m) {
  constexpr double kRadius = 240.0;  // units; the smallest map shows it whole
  return {.middle = {},
          .meters_per_unit = std::clamp(radius_m / kRadius, kNearestMap, kFarthestMap),
          .up = view.up};
}

std::size_t area_side(double radius_m) {
  constexpr double kMost = 400.0, kLeastCell_m = 10.0;
  return static_cast<std::size_t>(std::min(kMost, 2.0 * radius_m / kLeastCell_m));
}

bool same_ground(const MapQuestion& asked, const MapQuestion& now) {
  if (asked.practice != now.practice || asked.radius_m != now.radius_m ||
      asked.generation != now.generation) {
    return false;
  }
  constexpr double kPart = 1.0 / 500.0;  // of the radius: about a unit on the screen
  return path_between(asked.from, now.from).distance_m <= kPart * now.radius_m;
}

bool same_sheet(const MapQuestion& asked, const MapQuestion& now) {
  return asked.target == now.target && asked.antenna_m == now.antenna_m && same_ground(asked, now);
}

bool same_area(const AreaQuestion& asked, AreaQuestion now) {
  if (path_between(*asked.here.from, *now.here.from).distance_m <=
      2.0 * now.radius_m / static_cast<double>(area_side(now.radius_m))) {
    now.here.from = asked.here.from;
  }
  return asked == now;
}

}  // namespace mastwise
