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

PinNote pin_note(const Station& station) {
  return {.key = key_of(station),
          .call_sign = station.call_sign,
          .facility_id = station.facility_id,
          .channel = std::string(to_text(station.rf_channel))};
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
  question.pin_notes.clear();
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

void note_pins(Stop& stop, const StationsAnswer& answer) {
  std::erase_if(stop.pin_notes, [&](const PinNote& note) { return !is_pinned(stop, note.key); });
  for (const StationKey& key : stop.pinned) {
    const StationRow* row = find_row(answer, key);
    if (row == nullptr) continue;
    const auto known = std::find_if(stop.pin_notes.begin(), stop.pin_notes.end(),
                                    [&](const PinNote& note) { return note.key == key; });
    if (known == stop.pin_notes.end()) {
      stop.pin_notes.push_back(pin_note(row->station));
    } else {
      *known = pin_note(row->station);
    }
  }
}

bool any_lost_pin(const Stop& stop, const StationsAnswer& answer) {
  return std::any_of(answer.lost_pins.begin(), answer.lost_pins.end(),
                     [&](const LostPin& lost) { return is_pinned(stop, lost.pin.key); });
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
