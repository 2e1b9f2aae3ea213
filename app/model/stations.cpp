#include "app/model/stations.hpp"

#include "app/model/stop.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/compare.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {

StationKey key_of(const Station& station) {
  return {station.provenance.source.name, station.id};
}

StationsQuestion survey_part(StationsQuestion question) {
  question.search.clear();
  question.target.reset();
  question.pinned.clear();
  question.pinned_networks.clear();
  question.plan_for = {};
  question.plan_floor_percent = kUsualFloor_percent;
  question.compare = false;
  question.ahead.clear();
  return question;
}

const StationRow* find_row(const StationsAnswer& answer, const StationKey& key) {
  for (const StationRow& row : answer.rows) {
    if (key_of(row.station) == key) return &row;
  }
  return nullptr;
}

bool same_stop(const Position& a, const Position& b) {
  constexpr double kSameStop_m = 200.0;
  constexpr double kBox_deg = 0.01;  // of latitude 1.1 km: spares most geodesics
  if (std::fabs(a.latitude_deg() - b.latitude_deg()) > kBox_deg) return false;
  return path_between(a, b).distance_m <= kSameStop_m;
}

bool is_pinned(const Stop& stop, const StationKey& key) {
  return std::find(stop.pinned.begin(), stop.pinned.end(), key) != stop.pinned.end();
}

std::vector<std::string> networks_of(const Station& station) {
  std::vector<std::string> networks;
  if (!station.network.empty()) networks.push_back(station.network);
  for (const Program& program : station.programs) {
    if (!program.network.empty()) networks.push_back(program.network);
  }
  return networks;
}

bool carries(const Station& station, const std::string& network) {
  return reception::grants(station, {reception::Wish::Kind::network, network});
}

void add_ticked(Station& station, const std::vector<TickedNetwork>& ticked) {
  for (const TickedNetwork& one : ticked) {
    if (one.key != key_of(station) || carries(station, one.network)) continue;
    station.programs.push_back({.network = one.network});
  }
}

}  // namespace mastwise
