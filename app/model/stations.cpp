#include "app/model/stations.hpp"

#include "app/model/stop.hpp"

#include <algorithm>

namespace mastwise {

StationKey key_of(const Station& station) {
  return {station.provenance.source.name, station.id};
}

const StationRow* find_row(const StationsAnswer& answer, const StationKey& key) {
  for (const StationRow& row : answer.rows) {
    if (key_of(row.station) == key) return &row;
  }
  return nullptr;
}

bool is_pinned(const Stop& stop, const StationKey& key) {
  return std::find(stop.pinned.begin(), stop.pinned.end(), key) != stop.pinned.end();
}

std::vector<std::string> networks_of(const Station& station) {
  std::vector<std::string> networks;
  if (!station.network.empty()) networks.push_back(station.network);
  for (const Programme& programme : station.programmes) {
    if (!programme.network.empty()) networks.push_back(programme.network);
  }
  return networks;
}

}  // namespace mastwise
