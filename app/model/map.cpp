#include "app/model/map.hpp"

#include "app/model/model.hpp"
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

// Half the diagonal of the largest map on a screen, in units.
constexpr double kHalfDiagonal = 900.0;

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
  constexpr double kRadius = 200.0;  // units; the smallest map shows it whole
  return {.middle = {},
          .meters_per_unit = std::clamp(radius_m / kRadius, kNearestMap, kFarthestMap),
          .up = view.up};
}

std::size_t area_side(double radius_m) {
  constexpr double kMost = 400.0, kLeastCell_m = 10.0;
  return static_cast<std::size_t>(std::min(kMost, 2.0 * radius_m / kLeastCell_m));
}

bool same_sheet(const MapQuestion& asked, const MapQuestion& now) {
  if (asked.practice != now.practice || asked.radius_m != now.radius_m ||
      asked.generation != now.generation) {
    return false;
  }
  constexpr double kPart = 1.0 / 500.0;  // of the radius: about a unit on the screen
  return path_between(asked.from, now.from).distance_m <= kPart * now.radius_m;
}

bool same_area(const AreaQuestion& asked, AreaQuestion now) {
  if (path_between(*asked.here.from, *now.here.from).distance_m <=
      2.0 * now.radius_m / static_cast<double>(area_side(now.radius_m))) {
    now.here.from = asked.here.from;
  }
  return asked == now;
}

void switch_map(Model& model) {
  model.map.open = !model.map.open;
  if (!model.map.open || !model.stations) return;
  constexpr double kLikely_percent = 40.0, kLeast_m = 10e3, kMost_m = 150e3, kMargin = 1.15;
  double radius_m = 0.0;
  for (const StationRow& row : model.stations->rows) {
    if (row.outlook && row.outlook->chance_percent.value_or(0.0) >= kLikely_percent) {
      radius_m = std::max(radius_m, row.outlook->distance_m);
    }
  }
  if (model.findings.outlook) radius_m = std::max(radius_m, model.findings.outlook->distance_m);
  if (radius_m == 0.0) radius_m = kMost_m;
  model.map.view = around_stop(model.map.view, std::clamp(kMargin * radius_m, kLeast_m, kMost_m));
}

void touch_map(Model& model, MapOffset at) {
  constexpr double kReach = 48.0;  // units: half a thumb
  model.map.selected.reset();
  if (!model.stations) return;
  double nearest = kReach;
  for (const std::size_t i : model.findings.listed) {
    const StationRow& row = model.stations->rows[i];
    if (!row.outlook) continue;
    const MapOffset place =
        offset_of(model.map.view, plane_point(row.outlook->distance_m, row.outlook->bearing));
    const double away = std::hypot(place.right - at.right, place.down - at.down);
    if (away >= nearest) continue;
    nearest = away;
    model.map.selected = key_of(row.station);
  }
}

void next_map_up(Model& model) {
  const bool to_rig = model.map.up == MapUp::North && model.findings.nose;
  model.map.up = to_rig ? MapUp::Rig : MapUp::North;
}

void switch_area(Model& model) {
  model.map.area = !model.map.area;
  if (model.map.area) show_area(model);
}

void show_area(Model& model) {
  model.map.view = around_stop(model.map.view, kAreaRadii_m[model.map.area_radius]);
}

std::optional<MapQuestion> map_question(const Model& model) {
  if (model.place != Place::Stations || !model.map.open || !model.findings.position) {
    return std::nullopt;
  }
  constexpr double kLeast_m = 1000.0, kMost_m = 2'048e3;
  const MapView& view = model.map.view;
  const double reach_m =
      std::hypot(view.middle.east_m, view.middle.north_m) + kHalfDiagonal * view.meters_per_unit;
  double radius_m = kLeast_m;
  while (radius_m < std::min(reach_m, kMost_m)) radius_m *= 2.0;
  return MapQuestion{.from = *model.findings.position,
                     .practice = model.stop.practice,
                     .radius_m = radius_m,
                     .generation = stations_question(model).generation};
}

std::vector<Station> area_stations(const Model& model) {
  std::vector<Station> stations;
  if (model.stations) {
    for (const StationKey& key : model.stop.pinned) {
      if (const StationRow* row = find_row(*model.stations, key)) stations.push_back(row->station);
    }
  }
  if (stations.empty() && model.stop.target) stations.push_back(*model.stop.target);
  return stations;
}

std::optional<AreaQuestion> area_question(const Model& model) {
  if (!model.map.area || !map_question(model)) return std::nullopt;
  return AreaQuestion{.here = survey_part(stations_question(model)),
                      .stations = area_stations(model),
                      .radius_m = kAreaRadii_m[model.map.area_radius]};
}

}  // namespace mastwise
