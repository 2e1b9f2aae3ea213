#include "app/stations/update.hpp"

#include "app/words/chances.hpp"
#include "app/words/times.hpp"
#include "core/text/words.hpp"

#include <set>

namespace mastwise {
namespace {

// The rows with the chosen chance; by network, only the best row of each network.
void find_listed(StationsState& state, Shared& shared) {
  const double floor_percent = kChanceFloors[state.chance_floor];
  std::set<std::string> brought;
  for (std::size_t i = 0; i < shared.stations->rows.size(); ++i) {
    const StationRow& row = shared.stations->rows[i];
    const double chance =
        row.outlook && row.outlook->chance_percent ? *row.outlook->chance_percent : 0.0;
    if (chance < floor_percent) continue;
    if (!state.by_network) {
      shared.findings.listed.push_back(i);
      continue;
    }
    if (row.outlook && row.outlook->decoding == gear::Decoding::impossible) continue;
    std::string first;
    for (const std::string& network : networks_of(row.station)) {
      if (brought.insert(network).second && first.empty()) first = network;
    }
    if (first.empty()) continue;
    shared.findings.listed.push_back(i);
    state.brought.push_back(first);
  }
}

bool begins_with(std::string_view text, std::string_view beginning) {
  return text.size() >= beginning.size() &&
         words::same_word(text.substr(0, beginning.size()), beginning);
}

// The one network that starts with the searched text.
std::string pinnable_network(const Shared& shared) {
  const std::string_view wanted = words::trimmed(shared.search);
  if (wanted.empty()) return {};
  std::set<std::string> found;
  for (const StationRow& row : shared.stations->rows) {
    for (const std::string& network : networks_of(row.station)) {
      if (begins_with(network, wanted)) found.insert(network);
    }
  }
  return found.size() == 1 ? *found.begin() : std::string();
}

// Rows come best first.
std::string wanted_line(const std::vector<StationRow>& rows, const std::string& network) {
  for (const StationRow& row : rows) {
    if (!carries(row.station, network)) continue;
    std::string line = network + ": " + words::title(row.station);
    if (!row.outlook) return line;
    const std::string number = words::chance_number(*row.outlook);
    return line + ", " + (number.empty() ? words::chance_word(*row.outlook) : number);
  }
  return network + ": no station here";
}

// The gravest caution; another of the same weight adds nothing.
std::string caution_of(const Shared& shared) {
  std::string oldest;
  for (const std::size_t listed : shared.findings.listed) {
    const std::string& date = shared.stations->rows[listed].station.provenance.source.date;
    if (!date.empty() && (oldest.empty() || date < oldest)) oldest = date;
  }
  const std::string caution = words::data_caution(oldest, shared.findings.today);
  return caution.empty()
             ? caution
             : "Data " + words::data_age(oldest, shared.findings.today) + ". " + caution;
}

void derive_listing(StationsState& state, Shared& shared) {
  if (!shared.stations) return;
  find_listed(state, shared);
  state.pinnable = pinnable_network(shared);
  state.data_caution = caution_of(shared);
  if (!shared.stations->question.search.empty()) return;
  for (const std::string& network : shared.settings.pinned_networks) {
    state.wanted.push_back(wanted_line(shared.stations->rows, network));
  }
}

void derive_networks(StationsState& state, const Shared& shared) {
  if (!shared.stations) return;
  std::set<std::string> networks(shared.settings.pinned_networks.begin(),
                                 shared.settings.pinned_networks.end());
  for (const StationRow& row : shared.stations->rows) {
    for (std::string& network : networks_of(row.station)) networks.insert(std::move(network));
  }
  state.networks_around.assign(networks.begin(), networks.end());
}

class StationsUpdater {
 public:
  StationsUpdater(StationsState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::ClearSearch&) { shared_.search.clear(); }
  void operator()(const act::NextChanceFloor&) {
    state_.chance_floor = (state_.chance_floor + 1) % kChanceFloors.size();
  }
  void operator()(const act::SwitchGrouping&) { state_.by_network = !state_.by_network; }
  void operator()(const act::TickNetwork& tick) { tick_network(shared_.settings, tick.ticked); }
  void operator()(const act::PinNetwork& pin) { pin_network(shared_.settings, pin.network); }

 private:
  StationsState& state_;
  Shared& shared_;
};

}  // namespace

void update(StationsState& state, Shared& shared, const Action& action) {
  visit(action, StationsActions{}, StationsUpdater(state, shared));
}

void derive(StationsState& state, Shared& shared) {
  state = StationsState{.chance_floor = state.chance_floor, .by_network = state.by_network};
  derive_listing(state, shared);
  if (shared.sheet == Sheet::Carries) derive_networks(state, shared);
}

}  // namespace mastwise
