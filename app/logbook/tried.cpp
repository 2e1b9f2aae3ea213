#include "app/logbook/tried.hpp"

#include "app/logbook/log.hpp"
#include "core/stations/networks.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace mastwise {
namespace {

bool is_complete(const Shared& shared) {
  if (!shared.stations || !shared.findings.position) return false;
  const StationsAnswer& answer = *shared.stations;
  return answer.measured == answer.all && answer.question.search.empty() && answer.question.from &&
         answer.question.practice == shared.stop.practice &&
         same_stop(*answer.question.from, *shared.findings.position);
}

bool is_here(const TriedList& tried, const Shared& shared) {
  return tried.at && shared.findings.position && tried.practice == shared.stop.practice &&
         same_stop(*tried.at, *shared.findings.position);
}

// The virtual channel of the network, or else of the first program.
std::string channel_of(const Station& station, const std::string& network) {
  for (const Program& program : station.programs) {
    if (has_network({program.network}, network)) return program.virtual_channel;
  }
  return station.programs.empty() ? std::string() : station.programs.front().virtual_channel;
}

class Lister {
 public:
  Lister(LogbookState& state, const Shared& shared)
      : state_(state),
        shared_(shared),
        answer_(*shared.stations),
        seen_(seen_here(state, shared)) {}

  void list();

 private:
  TriedRow row_of(const StationRow& station, std::string name, std::string channel) const;
  bool better(const TriedRow& a, const TriedRow& b) const;
  std::vector<TriedRow> candidates() const;
  static std::map<std::pair<std::string, std::string>, const OutcomeRecord*> seen_here(
      const LogbookState& state, const Shared& shared);

  LogbookState& state_;
  const Shared& shared_;
  const StationsAnswer& answer_;
  std::map<std::pair<std::string, std::string>, const OutcomeRecord*> seen_;
};

std::map<std::pair<std::string, std::string>, const OutcomeRecord*> Lister::seen_here(
    const LogbookState& state, const Shared& shared) {
  std::map<std::pair<std::string, std::string>, const OutcomeRecord*> seen;
  for (const OutcomeRecord* outcome : outcomes_of_this_stop(state.log, shared)) {
    seen.emplace(std::pair(outcome->source, outcome->station_id), outcome);
  }
  return seen;
}

TriedRow Lister::row_of(const StationRow& station, std::string name, std::string channel) const {
  TriedRow row{.station = station, .name = std::move(name), .channel = std::move(channel)};
  const auto aimed = aimed_at(shared_);
  if (aimed) {
    const auto forecast = forecast_at(shared_, station, *aimed, answer_.question.learned);
    if (forecast) row.forecast_percent = forecast->chance_percent;
  } else if (station.outlook) {
    row.forecast_percent = station.outlook->chance_percent;
  }
  const StationKey key = key_of(station.station);
  const auto seen = seen_.find({key.source, key.id});
  if (seen != seen_.end()) row.seen = seen->second->outcome;
  return row;
}

// A network's station that was touched here stays its station.
bool Lister::better(const TriedRow& a, const TriedRow& b) const {
  if (a.seen.has_value() != b.seen.has_value()) return a.seen.has_value();
  return a.forecast_percent.value_or(-1.0) > b.forecast_percent.value_or(-1.0);
}

std::vector<TriedRow> Lister::candidates() const {
  std::vector<TriedRow> rows;
  for (const StationRow& station : answer_.rows) {
    const auto networks = networks_of(station.station);
    if (state_.tried_by == TriedBy::Stations || networks.empty()) {
      rows.push_back(row_of(station, station.station.call_sign, channel_of(station.station, {})));
      continue;
    }
    for (const std::string& network : networks) {
      TriedRow row = row_of(station, network, channel_of(station.station, network));
      const auto known = std::find_if(rows.begin(), rows.end(), [&](const TriedRow& one) {
        return !networks_of(one.station.station).empty() && has_network({one.name}, network);
      });
      if (known == rows.end()) {
        rows.push_back(std::move(row));
      } else if (better(row, *known)) {
        *known = std::move(row);
      }
    }
  }
  std::stable_sort(rows.begin(), rows.end(), [](const TriedRow& a, const TriedRow& b) {
    return a.forecast_percent.value_or(-1.0) > b.forecast_percent.value_or(-1.0);
  });
  return rows;
}

void Lister::list() {
  std::vector<TriedRow>& rows = state_.tried.rows;
  for (TriedRow& row : rows) {
    if (const StationRow* now = find_row(answer_, key_of(row.station.station))) {
      row = row_of(*now, row.name, row.channel);
    }
  }
  for (TriedRow& row : candidates()) {
    const bool known = std::any_of(rows.begin(), rows.end(), [&](const TriedRow& one) {
      const bool same_name = has_network({one.name}, row.name);
      return state_.tried_by == TriedBy::Networks && !networks_of(row.station.station).empty()
                 ? same_name && !networks_of(one.station.station).empty()
                 : key_of(one.station.station) == key_of(row.station.station);
    });
    if (!known) rows.push_back(std::move(row));
  }
  state_.tried.learned = answer_.question.learned;
  state_.tried.at = answer_.question.from;
  state_.tried.practice = answer_.question.practice;
}

}  // namespace

void list_tried(LogbookState& state, const Shared& shared, bool anew) {
  if (!is_complete(shared)) return;
  if (anew || !is_here(state.tried, shared)) state.tried = {};
  Lister(state, shared).list();
}

void mark_tried(LogbookState& state, const Shared& shared) {
  if (!is_here(state.tried, shared)) state.tried = {};
  const auto outcomes = outcomes_of_this_stop(state.log, shared);
  for (TriedRow& row : state.tried.rows) {
    row.seen.reset();
    row.seen_on.reset();
    const StationKey key = key_of(row.station.station);
    const auto seen = std::find_if(outcomes.begin(), outcomes.end(), [&](const auto* one) {
      return one->source == key.source && one->station_id == key.id;
    });
    if (seen == outcomes.end()) continue;
    row.seen = (*seen)->outcome;
    const auto day = local_day((*seen)->when, *shared.findings.zone.clocks);
    if (day != shared.findings.today) row.seen_on = day;
  }
}

SurveyedRow surveyed_row(const LogbookState& state, const Shared& shared, const StationKey& key) {
  if (shared.stations) {
    const StationRow* row = find_row(*shared.stations, key);
    if (row != nullptr) return {row, shared.stations->question.learned};
  }
  for (const TriedRow& row : state.tried.rows) {
    if (is_here(state.tried, shared) && key_of(row.station.station) == key) {
      return {&row.station, state.tried.learned};
    }
  }
  return {};
}

}  // namespace mastwise
