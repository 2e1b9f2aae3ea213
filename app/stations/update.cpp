#include "app/stations/update.hpp"

#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <set>

namespace mastwise {
namespace {

double chance_of(const StationRow& row) {
  return row.outlook ? row.outlook->chance_percent.value_or(0.0) : 0.0;
}

bool is_wanted(const Shared& shared, const StationRow& row) {
  const auto networks = networks_of(row.station);
  return is_pinned(shared.stop, key_of(row.station)) ||
         std::any_of(networks.begin(), networks.end(), [&](const std::string& network) {
           return is_pinned(shared.settings, network);
         });
}

// Lists the rows of one kind; by network, only the best row of each network.
class Lister {
 public:
  Lister(StationsState& state, Shared& shared) : state_(state), shared_(shared) {}

  void list() {
    for (std::size_t i = 0; i < shared_.stations->rows.size(); ++i) {
      const StationRow& row = shared_.stations->rows[i];
      const std::string network = new_network(row);
      const bool likely = chance_of(row) >= kUsualFloor_percent;
      add(ListOf::All, true, i, {});
      add(ListOf::Likely, likely, i, {});
      add(ListOf::Networks, !network.empty(), i, network);
      add(ListOf::Pinned, is_wanted(shared_, row), i, {});
    }
  }

 private:
  // The first network of the row that no row before it brings.
  std::string new_network(const StationRow& row) {
    std::string first;
    if (row.outlook && row.outlook->decoding == gear::Decoding::impossible) return first;
    for (const std::string& network : networks_of(row.station)) {
      if (brought_.insert(network).second && first.empty()) first = network;
    }
    return first;
  }

  void add(ListOf list, bool fits, std::size_t row, const std::string& network) {
    if (!fits) return;
    ++state_.counts[static_cast<std::size_t>(list)];
    if (list != state_.list_of) return;
    shared_.findings.listed.push_back(row);
    if (list == ListOf::Networks) state_.brought.push_back(network);
  }

  StationsState& state_;
  Shared& shared_;
  std::set<std::string> brought_;
};

bool brings(const PlanStep& step, const StationKey& key) {
  return std::any_of(step.brings.begin(), step.brings.end(),
                     [&](const PlanStation& station) { return station.key == key; });
}

std::size_t networks_brought(const StationsAnswer& answer, const PlanStep& step) {
  std::set<std::string> networks;
  for (const PlanStation& station : step.brings) {
    if (const StationRow* row = find_row(answer, station.key)) {
      for (std::string& network : networks_of(row->station)) networks.insert(std::move(network));
    }
  }
  return networks.size();
}

// Each listed station under the first heading that brings it in, the rest at the end.
void find_groups(StationsState& state, const Shared& shared) {
  const StationsAnswer& answer = *shared.stations;
  const auto& listed = shared.findings.listed;
  std::vector<bool> grouped(listed.size(), false);
  const auto take = [&](ListGroup group, const auto& belongs) {
    for (std::size_t i = 0; i < listed.size(); ++i) {
      if (grouped[i] || !belongs(answer.rows[listed[i]])) continue;
      grouped[i] = true;
      group.listed.push_back(i);
    }
    if (!group.listed.empty()) state.groups.push_back(std::move(group));
  };
  for (std::size_t turn = 0; turn < answer.turns.size(); ++turn) {
    const PlanStep& step = answer.turns[turn];
    take({.turn = turn, .networks = networks_brought(answer, step)},
         [&](const StationRow& row) { return brings(step, key_of(row.station)); });
  }
  take({}, [](const StationRow&) { return true; });
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
  return words::fill(words::say("{network}: no station here"), {{"network", network}});
}

// The gravest caution; another of the same weight adds nothing.
std::string caution_of(const Shared& shared) {
  std::string oldest;
  for (const std::size_t listed : shared.findings.listed) {
    const std::string& date = shared.stations->rows[listed].station.provenance.source.date;
    if (!date.empty() && (oldest.empty() || date < oldest)) oldest = date;
  }
  const std::string caution = words::data_caution(oldest, shared.findings.today);
  return caution.empty() ? caution
                         : words::fill(words::say("Data {age}. {caution}"),
                                       {{"age", words::data_age(oldest, shared.findings.today)},
                                        {"caution", caution}});
}

void derive_listing(StationsState& state, Shared& shared) {
  if (!shared.stations) return;
  Lister(state, shared).list();
  find_groups(state, shared);
  state.pinnable = pinnable_network(shared);
  state.data_caution = caution_of(shared);
  for (const LostPin& lost : shared.stations->lost_pins) {
    if (is_pinned(shared.stop, lost.pin.key)) state.lost_pins.push_back(lost);
  }
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
  void operator()(const act::ChooseList& chosen) { state_.list_of = chosen.list_of; }
  void operator()(const act::NextChanceFloor&) { between_all_and(ListOf::Likely); }
  void operator()(const act::SwitchGrouping&) { between_all_and(ListOf::Networks); }
  void operator()(const act::TickNetwork& tick) { tick_network(shared_.settings, tick.ticked); }
  void operator()(const act::PinNetwork& pin) { pin_network(shared_.settings, pin.network); }
  void operator()(const act::PinInstead& pin) {
    if (!is_pinned(shared_.stop, pin.lost)) return;
    remember(shared_, "Pinned");
    auto& pinned = shared_.stop.pinned;
    std::erase(pinned, pin.lost);
    if (!is_pinned(shared_.stop, pin.instead)) pinned.push_back(pin.instead);
    if (shared_.stations) note_pins(shared_.stop, *shared_.stations);
  }

 private:
  void between_all_and(ListOf list) {
    state_.list_of = state_.list_of == list ? ListOf::All : list;
  }

  StationsState& state_;
  Shared& shared_;
};

}  // namespace

void update(StationsState& state, Shared& shared, const Action& action) {
  visit(action, StationsActions{}, StationsUpdater(state, shared));
}

void derive(StationsState& state, Shared& shared) {
  state = StationsState{.list_of = state.list_of};
  derive_listing(state, shared);
  if (shared.sheet == Sheet::Carries) derive_networks(state, shared);
}

}  // namespace mastwise
