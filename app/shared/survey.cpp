#include "app/shared/survey.hpp"

#include "app/shared/stop.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/compare.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {

StationKey key_of(const Station& station) {
  return {station.provenance.source.name, station.id};
}

bool same_question(const StationsQuestion& asked, StationsQuestion now) {
  constexpr double kSamePlaceM = 50.0;
  if (asked.from && now.from && path_between(*asked.from, *now.from).distance_m < kSamePlaceM) {
    now.from = asked.from;
  }
  return asked == now;
}

StationsQuestion elsewhere(StationsQuestion question, const Position& place) {
  question.from = place;
  question.ring = {};
  return question;
}

StationsQuestion survey_part(StationsQuestion question) {
  question.search.clear();
  question.target.reset();
  question.turn.reset();
  question.pinned.clear();
  question.pinned_networks.clear();
  question.plan_for = {};
  question.plan_floor_percent = kUsualFloor_percent;
  question.compare = false;
  question.compare_pinned = false;
  question.ahead.clear();
  return question;
}

const StationRow* find_row(const StationsAnswer& answer, const StationKey& key) {
  for (const StationRow& row : answer.rows) {
    if (key_of(row.station) == key) return &row;
  }
  return nullptr;
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

std::vector<ScanCandidate> scan_candidates(const StationsAnswer& answer, const PlanStep& step) {
  std::vector<ScanCandidate> candidates;
  for (const PlanStation& station : step.brings) {
    const StationRow* row = find_row(answer, station.key);
    if (row == nullptr || !row->outlook) continue;
    candidates.push_back({.station = row->station,
                          .chance_percent = station.chance_percent,
                          .bearing = row->outlook->bearing,
                          .distance_m = row->outlook->distance_m});
  }
  return candidates;
}

}  // namespace mastwise
