#include "app/map/clusters.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

constexpr double kApart = 40.0;  // units between the middles of two marks

int rank(const StationRow& row, const Shared& shared, const std::optional<StationKey>& selected) {
  const StationKey key = key_of(row.station);
  if (selected == key) return 0;
  if (shared.stop.target && key_of(*shared.stop.target) == key) return 1;
  return is_pinned(shared.stop, key) ? 2 : 3;
}

}  // namespace

std::vector<Cluster> clusters(const MapView& view, const Shared& shared,
                              const std::optional<StationKey>& selected) {
  constexpr double kNearScreen = 1'500.0;  // units from its middle
  struct Place {
    const StationRow* row;
    MapOffset at;
    int rank;
  };
  std::vector<Place> places;
  if (!shared.stations) return {};
  for (const std::size_t i : shared.findings.listed) {
    const StationRow& row = shared.stations->rows[i];
    if (!row.outlook) continue;
    const MapOffset at =
        offset_of(view, plane_point(row.outlook->distance_m, row.outlook->bearing));
    if (std::hypot(at.right, at.down) > kNearScreen) continue;
    places.push_back({&row, at, rank(row, shared, selected)});
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const Place& a, const Place& b) { return a.rank < b.rank; });
  std::vector<Cluster> found;
  for (const Place& place : places) {
    const auto covers = [&](const Cluster& cluster) {
      return std::hypot(cluster.at.right - place.at.right, cluster.at.down - place.at.down) <
             kApart;
    };
    const auto near = std::find_if(found.begin(), found.end(), covers);
    if (near != found.end()) {
      near->rows.push_back(place.row);
    } else {
      found.push_back({.at = place.at, .rows = {place.row}});
    }
  }
  return found;
}

std::optional<StationKey> next_of(const Cluster& cluster, const std::optional<StationKey>& before) {
  const auto is_before = [&](const StationRow* row) { return before == key_of(row->station); };
  if (std::none_of(cluster.rows.begin(), cluster.rows.end(), is_before)) {
    return key_of(cluster.first().station);
  }
  // In the order of the list, whichever of them the cluster is gathered around.
  std::vector<const StationRow*> rows = cluster.rows;
  std::sort(rows.begin(), rows.end());
  if (rows.size() == 1) return std::nullopt;
  const auto next = std::find_if(rows.begin(), rows.end(), is_before) + 1;
  return key_of((next == rows.end() ? rows.front() : *next)->station);
}

}  // namespace mastwise
