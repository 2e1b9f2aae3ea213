#include "app/map/update.hpp"

#include "app/shared/actions.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

// Half the diagonal of the largest map on a screen, in units.
constexpr double kHalfDiagonal = 900.0;

// The stations likely here fill the map that was just opened.
void open_map(MapState& state, const Shared& shared) {
  if (!shared.stations) return;
  constexpr double kLikely_percent = 40.0, kLeast_m = 10e3, kMost_m = 150e3, kMargin = 1.15;
  double radius_m = 0.0;
  for (const StationRow& row : shared.stations->rows) {
    if (row.outlook && row.outlook->chance_percent.value_or(0.0) >= kLikely_percent) {
      radius_m = std::max(radius_m, row.outlook->distance_m);
    }
  }
  if (shared.findings.outlook) radius_m = std::max(radius_m, shared.findings.outlook->distance_m);
  if (radius_m == 0.0) radius_m = kMost_m;
  state.view = around_stop(state.view, std::clamp(kMargin * radius_m, kLeast_m, kMost_m));
}

// The listed station nearest to a touch on the map, or none.
void touch_map(MapState& state, const Shared& shared, MapOffset at) {
  constexpr double kReach = 48.0;  // units: half a thumb
  state.selected.reset();
  if (!shared.stations) return;
  double nearest = kReach;
  for (const std::size_t i : shared.findings.listed) {
    const StationRow& row = shared.stations->rows[i];
    if (!row.outlook) continue;
    const MapOffset place =
        offset_of(state.view, plane_point(row.outlook->distance_m, row.outlook->bearing));
    const double away = std::hypot(place.right - at.right, place.down - at.down);
    if (away >= nearest) continue;
    nearest = away;
    state.selected = key_of(row.station);
  }
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
  void operator()(const act::NextMapUp&) {
    const bool to_rig = state_.up == MapUp::North && shared_.findings.nose;
    state_.up = to_rig ? MapUp::Rig : MapUp::North;
  }
  void operator()(const act::CenterMap&) { state_.view.middle = {}; }
  void operator()(const act::SwitchArea&) {
    state_.area = !state_.area;
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
  const Shared& shared_;
};

}  // namespace

void update(MapState& state, Shared& shared, const Action& action) {
  const bool shown = action.is<act::SwitchMap>() || action.is<act::Show>();
  if (shown && shared.place == Place::Map) open_map(state, shared);
  if (action.is<act::SwitchPractice>()) state = MapState{.sheets = state.sheets};
  visit(action, MapActions{}, MapUpdater(state, shared));
}

void derive(MapState& state, const Shared& shared) {
  if (state.up == MapUp::Turned) return;
  const bool by_nose = state.up == MapUp::Rig && shared.findings.nose;
  state.view.up = by_nose ? shared.findings.nose->nose() : Bearing<True>();
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
                     .generation = here.generation};
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
