#include "app/map/update.hpp"

#include "app/map/clusters.hpp"
#include "app/shared/actions.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace mastwise {
namespace {

// Half the diagonal of the largest map on a screen, in units.
constexpr double kHalfDiagonal = 900.0;

constexpr double kLeastRadius_m = 10e3, kMostRadius_m = 150e3;

// How far the stations likely here are, without the few farthest; 0 if none is.
double likely_m(const Shared& shared) {
  constexpr double kLikely_percent = 70.0, kMost = 0.85;
  std::vector<double> distances_m;
  if (!shared.stations) return 0.0;
  for (const StationRow& row : shared.stations->rows) {
    if (row.outlook && row.outlook->chance_percent.value_or(0.0) >= kLikely_percent) {
      distances_m.push_back(row.outlook->distance_m);
    }
  }
  if (distances_m.empty()) return 0.0;
  std::sort(distances_m.begin(), distances_m.end());
  return distances_m[static_cast<std::size_t>(kMost * static_cast<double>(distances_m.size() - 1))];
}

// The stations likely here fill the map that was just opened.
void open_map(MapState& state, const Shared& shared) {
  constexpr double kMargin = 1.1;
  double radius_m = likely_m(shared);
  if (shared.findings.outlook) radius_m = std::max(radius_m, shared.findings.outlook->distance_m);
  if (radius_m == 0.0) radius_m = kMostRadius_m;
  state.view =
      around_stop(state.view, std::clamp(kMargin * radius_m, kLeastRadius_m, kMostRadius_m));
}

// Opened before the survey was done, and not moved since.
bool opened_blindly(const MapState& state) {
  return state.view == around_stop(state.view, kMostRadius_m);
}

// The station whose mark is nearest to a touch, or none; of a mark that stands for several, one
// after another.
void touch_map(MapState& state, const Shared& shared, MapOffset at) {
  constexpr double kReach = 48.0;  // units: half a thumb
  state.spot.reset();
  const auto before = std::exchange(state.selected, std::nullopt);
  const std::vector<Cluster> all = clusters(state.view, shared, before);
  const Cluster* touched = nullptr;
  double nearest = kReach;
  for (const Cluster& cluster : all) {
    const double away = std::hypot(cluster.at.right - at.right, cluster.at.down - at.down);
    if (away >= nearest) continue;
    nearest = away;
    touched = &cluster;
  }
  if (touched != nullptr) state.selected = next_of(*touched, before);
}

// A finger hits within some 10 units, 1.3 mm [our choice, no source].
void hold_map(MapState& state, const Shared& shared, MapOffset at) {
  constexpr double kFinger = 10.0;
  const auto& stop = shared.findings.position;
  if (!stop) return;
  const map::PlanePoint point = point_at(state.view, at);
  const auto bearing =
      Bearing<True>::degrees(std::atan2(point.east_m, point.north_m) * 180.0 / std::numbers::pi);
  state.selected.reset();
  state.spot =
      MapSpot{.position = destination(*stop, bearing, std::hypot(point.east_m, point.north_m)),
              .error_m = std::max(kTypedPosition_m, kFinger * state.view.meters_per_unit)};
}

void show_area(MapState& state) {
  state.view = around_stop(state.view, kAreaRadii_m[state.area_radius]);
}

class MapUpdater {
 public:
  MapUpdater(MapState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::MoveMap& move) {
    state_.view = moved(state_.view, move.move);
    if (move.move.turn_deg != 0.0) state_.up = MapUp::Turned;
  }
  void operator()(const act::TouchMap& touch) { touch_map(state_, shared_, touch.at); }
  void operator()(const act::HoldMap& hold) { hold_map(state_, shared_, hold.at); }
  void operator()(const act::UseSpot&) {
    if (!state_.spot) return;
    remember(shared_, "Stop set on the map");
    stand_at(shared_.stop, state_.spot->position, state_.spot->error_m);
    state_.view.middle = {};
    state_.spot.reset();
  }
  void operator()(const act::CompareSpot&) {
    if (!state_.spot) return;
    shared_.following.push_back(act::PlaceTyped{state_.spot->position});
    shared_.following.push_back(act::Show{Place::Ahead});
    state_.spot.reset();
  }
  void operator()(const act::ChooseMapUp& choice) {
    if (choice.up != MapUp::Rig || shared_.findings.nose) state_.up = choice.up;
  }
  void operator()(const act::NextMapUp&) {
    const bool to_rig = state_.up == MapUp::North && shared_.findings.nose;
    state_.up = to_rig ? MapUp::Rig : MapUp::North;
  }
  void operator()(const act::CenterMap&) { state_.view.middle = {}; }
  void operator()(const act::SwitchArea&) {
    state_.area = !state_.area;
    state_.spot.reset();
    state_.selected.reset();
    if (state_.area) show_area(state_);
  }
  void operator()(const act::NextAreaRadius&) {
    state_.area_radius = (state_.area_radius + 1) % kAreaRadii_m.size();
    show_area(state_);
  }
  void operator()(const act::MapDrawn& drawn) {
    state_.sheet = drawn.sheet;
    state_.sheet_serial = ++state_.sheets;
  }
  void operator()(const act::AreaScanned& scanned) {
    state_.area_sheet = scanned.sheet;
    state_.area_serial = ++state_.sheets;
  }

 private:
  MapState& state_;
  Shared& shared_;
};

}  // namespace

void update(MapState& state, Shared& shared, const Action& action) {
  const bool shown = action.is<act::SwitchMap>() || action.is<act::Show>();
  if (shown && shared.place == Place::Map) open_map(state, shared);
  const auto* found = action.get_if<act::StationsFound>();
  const bool surveyed = found != nullptr && found->answer.measured == found->answer.all;
  if (surveyed && shared.place == Place::Map && !state.area && opened_blindly(state)) {
    open_map(state, shared);
  }
  if (action.is<act::SwitchPractice>()) state = MapState{.sheets = state.sheets};
  visit(action, MapActions{}, MapUpdater(state, shared));
}

void derive(MapState& state, const Shared& shared) {
  if (!shared.findings.position) state.spot.reset();
  if (state.spot) {
    const PathBetween way = path_between(*shared.findings.position, state.spot->position);
    state.spot->distance_m = way.distance_m;
    state.spot->bearing = way.bearing;
  }
  if (state.up == MapUp::Turned) return;
  const bool by_nose = state.up == MapUp::Rig && shared.findings.nose;
  state.view.up = by_nose ? shared.findings.nose->nose() : Bearing<True>();
}

const reception::RidgeShadow* shadow_of_target(const MapState& state, const Shared& shared) {
  const bool same =
      state.sheet && state.sheet->shadow && state.sheet->question.target == shared.stop.target;
  return same ? &*state.sheet->shadow : nullptr;
}

std::optional<MapQuestion> map_question(const MapState& state, const Shared& shared,
                                        const StationsQuestion& here) {
  if (shared.place != Place::Map || !shared.findings.position) {
    return std::nullopt;
  }
  constexpr double kLeast_m = 1000.0, kMost_m = 2'048e3;
  const MapView& view = state.view;
  const double reach_m =
      std::hypot(view.middle.east_m, view.middle.north_m) + kHalfDiagonal * view.meters_per_unit;
  double radius_m = kLeast_m;
  while (radius_m < std::min(reach_m, kMost_m)) radius_m *= 2.0;
  return MapQuestion{.from = *shared.findings.position,
                     .practice = shared.stop.practice,
                     .radius_m = radius_m,
                     .generation = here.generation,
                     .target = shared.stop.target,
                     .antenna_m = gear_of(here.gear).height_m};
}

std::vector<Station> area_stations(const Shared& shared) {
  std::vector<Station> stations;
  if (shared.stations) {
    for (const StationKey& key : shared.stop.pinned) {
      if (const StationRow* row = find_row(*shared.stations, key)) stations.push_back(row->station);
    }
  }
  if (stations.empty() && shared.stop.target) stations.push_back(*shared.stop.target);
  return stations;
}

std::optional<AreaQuestion> area_question(const MapState& state, const Shared& shared,
                                          const StationsQuestion& here) {
  if (!state.area || !map_question(state, shared, here)) return std::nullopt;
  return AreaQuestion{.here = survey_part(here),
                      .stations = area_stations(shared),
                      .radius_m = kAreaRadii_m[state.area_radius]};
}

}  // namespace mastwise
