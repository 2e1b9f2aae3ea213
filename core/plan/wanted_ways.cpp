#include "core/plan/wanted_ways.hpp"

#include "core/plan/fewest_sets.hpp"
#include "core/reception/chance.hpp"
#include "core/reception/compare_gears.hpp"
#include "core/stations/networks.hpp"

#include <algorithm>

namespace mastwise {
namespace {

// Stations any one of which will do.
using Candidates = std::vector<std::size_t>;

class WantedWays {
 public:
  WantedWays(std::span<const Station> stations, std::span<const SeenStation> seen)
      : stations_(stations), seen_(seen) {}

  void want(const WantedByName& wanted);
  void want_all_likely();
  std::vector<std::size_t> choose() const;

 private:
  void add_network(const std::string& network, bool likely_only);
  bool carried_by(std::size_t station, const std::string& network) const;
  std::size_t best_in_direction(const Candidates& goal, std::size_t toward) const;
  bool one_direction(std::size_t a, std::size_t b) const {
    return (seen_[a].bearing - seen_[b].bearing).size_deg() <= kOneDirection_deg;
  }
  double chance(std::size_t station) const { return seen_[station].chance_percent.value_or(-1.0); }

  std::span<const Station> stations_;
  std::span<const SeenStation> seen_;
  std::vector<Candidates> goals_ = {};
};

bool WantedWays::carried_by(std::size_t station, const std::string& network) const {
  return has_network(networks_of(stations_[station]), network);
}

// The carriers with the best one's word.
void WantedWays::add_network(const std::string& network, bool likely_only) {
  Candidates carriers;
  double best = -1.0;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    if (!seen_[i].chance_percent || !carried_by(i, network)) continue;
    carriers.push_back(i);
    best = std::max(best, chance(i));
  }
  if (carriers.empty() || (likely_only && !reception::is_likely(best))) return;
  std::erase_if(carriers, [&](std::size_t i) {
    return reception::chance_word(chance(i)) != reception::chance_word(best);
  });
  goals_.push_back(std::move(carriers));
}

void WantedWays::want(const WantedByName& wanted) {
  for (const std::size_t station : wanted.stations) goals_.push_back({station});
  for (const std::string& network : wanted.networks) {
    const bool met = std::any_of(wanted.stations.begin(), wanted.stations.end(),
                                 [&](std::size_t station) { return carried_by(station, network); });
    if (!met) add_network(network, false);
  }
}

void WantedWays::want_all_likely() {
  std::vector<std::string> added;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    const std::vector<std::string> networks = networks_of(stations_[i]);
    if (networks.empty() && reception::is_likely(seen_[i].chance_percent)) goals_.push_back({i});
    for (const std::string& network : networks) {
      if (has_network(added, network)) continue;
      added.push_back(network);
      add_network(network, true);
    }
  }
}

std::size_t WantedWays::best_in_direction(const Candidates& goal, std::size_t toward) const {
  std::size_t best = stations_.size();
  for (const std::size_t one : goal) {
    if (!one_direction(one, toward)) continue;
    if (best == stations_.size() || chance(one) > chance(best)) best = one;
  }
  return best;
}

std::vector<std::size_t> WantedWays::choose() const {
  std::vector<std::size_t> directions;
  for (const Candidates& goal : goals_)
    directions.insert(directions.end(), goal.begin(), goal.end());
  std::sort(directions.begin(), directions.end());
  directions.erase(std::unique(directions.begin(), directions.end()), directions.end());
  // Of directions that meet the same goals the search takes the first: the best.
  const auto total = [&](std::size_t toward) {
    double sum = 0.0;
    for (const Candidates& goal : goals_) {
      const std::size_t best = best_in_direction(goal, toward);
      if (best < stations_.size()) sum += std::max(0.0, chance(best));
    }
    return sum;
  };
  std::stable_sort(directions.begin(), directions.end(),
                   [&](std::size_t one, std::size_t other) { return total(one) > total(other); });
  std::vector<IndexSet> met(directions.size(), IndexSet(goals_.size()));
  for (std::size_t d = 0; d < directions.size(); ++d) {
    for (std::size_t g = 0; g < goals_.size(); ++g) {
      if (best_in_direction(goals_[g], directions[d]) < stations_.size()) met[d].add(g);
    }
  }
  std::vector<std::size_t> best;
  double best_sum = -1.0;
  for (const auto& choice : fewest_sets(goals_.size(), met).choices) {
    std::vector<std::size_t> taken;
    double sum = 0.0;
    for (const Candidates& goal : goals_) {
      std::size_t station = stations_.size();
      for (const std::size_t d : choice) {
        const std::size_t one = best_in_direction(goal, directions[d]);
        if (one == stations_.size()) continue;
        if (station == stations_.size() || chance(one) > chance(station)) station = one;
      }
      taken.push_back(station);
      sum += std::max(0.0, chance(station));
    }
    if (sum <= best_sum) continue;
    best_sum = sum;
    best = std::move(taken);
  }
  std::sort(best.begin(), best.end());
  best.erase(std::unique(best.begin(), best.end()), best.end());
  return best;
}

}  // namespace

std::vector<std::size_t> stations_to_keep_clear(std::span<const Station> stations,
                                                std::span<const SeenStation> seen,
                                                const WantedByName& wanted) {
  WantedWays ways(stations, seen);
  if (wanted.stations.empty() && wanted.networks.empty()) {
    ways.want_all_likely();
  } else {
    ways.want(wanted);
  }
  return ways.choose();
}

}  // namespace mastwise
