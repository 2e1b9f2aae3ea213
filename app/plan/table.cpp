#include "app/plan/table.hpp"

#include "app/words/chances.hpp"
#include "core/stations/networks.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace mastwise {
namespace {

// What a receiver shows for the station's program of a network, else of its first program.
std::string channel_for(const Station& station, const std::string& network) {
  for (const Program& program : station.programs) {
    if (!program.virtual_channel.empty() && words::same_word(program.network, network)) {
      return program.virtual_channel;
    }
  }
  const bool numbered =
      !station.programs.empty() && !station.programs.front().virtual_channel.empty();
  return numbered ? station.programs.front().virtual_channel : station.call_sign;
}

class TableMaker {
 public:
  TableMaker(const StationsAnswer& answer, std::size_t second)
      : answer_(answer), question_(answer.question), plan_(*answer.plan), second_(second) {}
  PlanTable make();

 private:
  // A station at one heading.
  struct At {
    std::size_t column;
    double chance_percent;
    bool comes_in;
  };
  // A station that some heading brings, at each column.
  struct Known {
    PlanStation station;
    std::vector<std::string> networks = {};
    std::vector<At> at = {};
  };

  void add_column(const PlanStep& step);
  void note(const PlanStation& station, std::size_t column, bool comes_in);
  bool pinned(const Known& known) const;
  std::vector<std::string> rows_of(const Known& known) const;
  void add_to_row(const std::string& name, bool wanted, const Known& known);
  void fill_rows();
  void add_missing_rows();
  void add_changes(PlanRow& row, const Known& known, const std::string& channel);
  void count();
  void add_weak();
  const Station* station(const StationKey& key) const;

  const StationsAnswer& answer_;
  const StationsQuestion& question_;
  const Plan& plan_;
  std::size_t second_;
  std::vector<Known> known_ = {};
  PlanTable table_ = {};
};

const Station* TableMaker::station(const StationKey& key) const {
  const StationRow* row = find_row(answer_, key);
  return row == nullptr ? nullptr : &row->station;
}

void TableMaker::note(const PlanStation& station, std::size_t column, bool comes_in) {
  auto known = std::find_if(known_.begin(), known_.end(),
                            [&](const Known& one) { return one.station.key == station.key; });
  if (known == known_.end()) {
    const Station* full = this->station(station.key);
    known = known_.insert(known, Known{.station = station});
    if (full != nullptr) known->networks = networks_of(*full);
  }
  known->at.push_back({column, station.chance_percent, comes_in});
}

void TableMaker::add_column(const PlanStep& step) {
  const std::size_t column = table_.columns.size();
  table_.columns.push_back({.bearing = step.bearing, .slack = step.slack, .remarks = step.remarks});
  if (!step.brings.empty()) table_.columns.back().aim_at = step.brings.front().key;
  for (const PlanStation& station : step.brings) note(station, column, true);
  for (const PlanStation& station : step.loses) note(station, column, false);
}

bool TableMaker::pinned(const Known& known) const {
  const auto& keys = table_.nothing_pinned && question_.target
                         ? std::vector<StationKey>{*question_.target}
                         : question_.pinned;
  return std::find(keys.begin(), keys.end(), known.station.key) != keys.end();
}

// The networks, or the station itself where they are unknown.
std::vector<std::string> TableMaker::rows_of(const Known& known) const {
  if (!known.networks.empty()) return known.networks;
  return {known.station.title};
}

void TableMaker::add_changes(PlanRow& row, const Known& known, const std::string& channel) {
  if (table_.shown == 0) return;
  const auto in = [&](std::size_t column) {
    return std::any_of(known.at.begin(), known.at.end(),
                       [&](const At& at) { return at.column == column && at.comes_in; });
  };
  if (in(0) == in(table_.shown)) return;
  PlanChange change{.channel = channel, .gained = in(table_.shown)};
  for (const At& at : known.at) {
    if (at.column == table_.shown) change.chance_percent = at.chance_percent;
  }
  row.changes.push_back(std::move(change));
}

void TableMaker::add_to_row(const std::string& name, bool wanted, const Known& known) {
  auto row = std::find_if(table_.rows.begin(), table_.rows.end(), [&](const PlanRow& one) {
    return one.wanted == wanted && words::same_word(one.name, name);
  });
  if (row == table_.rows.end()) {
    row = table_.rows.insert(row, PlanRow{.name = name, .wanted = wanted});
    row->cells.resize(table_.columns.size());
  }
  const Station* full = station(known.station.key);
  const std::string channel = full == nullptr ? known.station.title : channel_for(*full, name);
  for (const At& at : known.at) {
    auto& cell = row->cells[at.column];
    if (cell && cell->chance_percent >= at.chance_percent) continue;
    cell = PlanCell{.key = known.station.key,
                    .channel = channel,
                    .chance_percent = at.chance_percent,
                    .comes_in = at.comes_in};
  }
  add_changes(*row, known, channel);
}

void TableMaker::fill_rows() {
  const bool of_pinned = question_.plan_for == PlanFor::Pinned;
  const auto& networks = question_.pinned_networks;
  for (const Known& known : known_) {
    if (of_pinned && pinned(known)) add_to_row(known.station.title, true, known);
    for (const std::string& name : rows_of(known)) {
      const bool wanted =
          !of_pinned || std::any_of(networks.begin(), networks.end(), [&](const std::string& one) {
            return words::same_word(one, name);
          });
      add_to_row(name, wanted, known);
    }
  }
}

// What is wanted, but no heading brings: a row without cells.
void TableMaker::add_missing_rows() {
  if (question_.plan_for == PlanFor::All) return;
  for (const NotInPlan& out : plan_.out) {
    const bool there = std::any_of(table_.rows.begin(), table_.rows.end(), [&](const PlanRow& row) {
      return row.wanted && words::same_word(row.name, out.name);
    });
    if (there) continue;
    table_.rows.push_back({.name = out.name});
    table_.rows.back().cells.resize(table_.columns.size());
  }
}

void TableMaker::count() {
  for (const Known& known : known_) {
    const auto in = [&](std::size_t column) {
      return std::any_of(known.at.begin(), known.at.end(),
                         [&](const At& at) { return at.column == column && at.comes_in; });
    };
    if (table_.shown == 0 || in(0) == in(table_.shown)) continue;
    ++(in(table_.shown) ? table_.gained : table_.lost);
  }
  const std::size_t planned = plan_.steps.size();
  if (question_.plan_for == PlanFor::All) {
    table_.wanted = plan_.out.size();
    for (const Known& known : known_) {
      const bool in = std::any_of(known.at.begin(), known.at.end(),
                                  [&](const At& at) { return at.comes_in && at.column < planned; });
      table_.brought += in ? 1 : 0;
    }
    table_.wanted += table_.brought;
    return;
  }
  for (const PlanRow& row : table_.rows) {
    if (!row.wanted) continue;
    ++table_.wanted;
    const auto end = row.cells.begin() + static_cast<std::ptrdiff_t>(planned);
    table_.brought +=
        std::any_of(row.cells.begin(), end, [](const auto& cell) { return cell && cell->comes_in; })
            ? 1
            : 0;
  }
}

void TableMaker::add_weak() {
  const auto add = [&](const NotInPlan& out) {
    WeakStation weak{.name = out.name, .best_percent = out.best_percent};
    const StationRow* row = out.key ? find_row(answer_, *out.key) : nullptr;
    if (row != nullptr) {
      const std::vector<std::string> networks = networks_of(row->station);
      const std::string network = has_network(networks, out.name) ? out.name
                                  : networks.empty()              ? std::string()
                                                                  : networks.front();
      weak.channel = channel_for(row->station, network);
      if (!network.empty()) weak.name = network;
      const auto why = std::find_if(row->reasons.begin(), row->reasons.end(),
                                    [](const reception::Reason& reason) {
                                      return reason.kind() != reception::ReasonKind::shortfall;
                                    });
      if (why != row->reasons.end()) weak.why = *why;
    }
    table_.weak.push_back(std::move(weak));
  };
  for (const NotInPlan& out : plan_.out) add(out);
  for (const NotInPlan& out : plan_.too_weak) add(out);
}

PlanTable TableMaker::make() {
  table_.nothing_pinned = question_.plan_for == PlanFor::Pinned && question_.pinned.empty() &&
                          question_.pinned_networks.empty();
  for (const PlanStep& step : plan_.steps) add_column(step);
  if (plan_.again) add_column(*plan_.again);
  table_.again = plan_.again.has_value();
  const std::size_t last = table_.columns.empty() ? 0 : table_.columns.size() - 1;
  table_.shown = std::min(std::max<std::size_t>(second_, 1), last);
  fill_rows();
  add_missing_rows();
  std::stable_sort(table_.rows.begin(), table_.rows.end(), [](const PlanRow& a, const PlanRow& b) {
    return a.wanted != b.wanted ? a.wanted : a.name < b.name;
  });
  count();
  add_weak();
  return std::move(table_);
}

}  // namespace

PlanTable plan_table(const StationsAnswer& answer, std::size_t second) {
  return TableMaker(answer, second).make();
}

}  // namespace mastwise
