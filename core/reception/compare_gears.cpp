#include "core/reception/compare_gears.hpp"

#include "core/reception/chance.hpp"
#include "core/stations/networks.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <iterator>

namespace mastwise::reception {
namespace {

// Gathers what can be watched, each with the best station for each gear.
class Watched {
 public:
  explicit Watched(std::span<const GearChances> chances) : chances_(chances) {}

  void add(std::size_t station, const std::vector<std::string>& carried) {
    if (carried.empty()) {
      unnamed.push_back({.by_gear = std::vector<std::optional<Watchable::Best>>(chances_.size())});
      improve(unnamed.back(), station);
    }
    for (const std::string& network : carried) improve(of(network), station);
  }

  std::vector<Watchable> networks = {}, unnamed = {};

 private:
  Watchable& of(const std::string& network) {
    const auto known = std::find_if(networks.begin(), networks.end(), [&](const Watchable& one) {
      return words::same_word(one.network, network);
    });
    if (known != networks.end()) return *known;
    networks.push_back({.network = network,
                        .by_gear = std::vector<std::optional<Watchable::Best>>(chances_.size())});
    return networks.back();
  }

  void improve(Watchable& watchable, std::size_t station) const {
    for (std::size_t gear = 0; gear < chances_.size(); ++gear) {
      const std::optional<double>& percent = chances_[gear][station];
      auto& best = watchable.by_gear[gear];
      if (!percent || (best && best->chance_percent >= *percent)) continue;
      best = Watchable::Best{.station = station, .chance_percent = *percent};
    }
  }

  std::span<const GearChances> chances_;
};

std::size_t gears_with(const Watchable& watchable) {
  std::size_t count = 0;
  for (std::size_t gear = 0; gear < watchable.by_gear.size(); ++gear) {
    count += watchable.with(gear) ? 1U : 0U;
  }
  return count;
}

// Moves those that no gear brings to `left_out`, and sorts the rest.
void keep_likely(std::vector<Watchable>& all, std::vector<Watchable>* left_out) {
  const auto kept = std::stable_partition(all.begin(), all.end(),
                                          [](const Watchable& one) { return one.with_any(); });
  if (left_out != nullptr) std::move(kept, all.end(), std::back_inserter(*left_out));
  all.erase(kept, all.end());
  std::stable_sort(all.begin(), all.end(), [](const Watchable& one, const Watchable& other) {
    const std::size_t gears = gears_with(one), other_gears = gears_with(other);
    return gears != other_gears ? gears > other_gears : one.network < other.network;
  });
}

std::size_t count_with(const std::vector<Watchable>& all, std::size_t gear) {
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [&](const Watchable& one) { return one.with(gear); }));
}

std::vector<std::size_t> only_with(std::span<const GearChances> chances, std::size_t gear) {
  std::vector<std::size_t> only;
  for (std::size_t station = 0; station < chances[gear].size(); ++station) {
    std::size_t with = 0;
    for (const GearChances& each : chances) with += is_likely(each[station]) ? 1U : 0U;
    if (with == 1 && is_likely(chances[gear][station])) only.push_back(station);
  }
  std::stable_sort(only.begin(), only.end(), [&](std::size_t one, std::size_t other) {
    return *chances[gear][one] > *chances[gear][other];
  });
  return only;
}

}  // namespace

bool is_likely(const std::optional<double>& percent) {
  return percent && chance_word(*percent) <= ChanceWord::likely;
}

bool Watchable::with(std::size_t gear) const {
  return by_gear[gear] && is_likely(by_gear[gear]->chance_percent);
}

bool Watchable::with_any() const {
  return gears_with(*this) > 0;
}

GearComparison compare_gears(std::span<const Station> stations,
                             std::span<const GearChances> chances) {
  Watched watched(chances);
  for (std::size_t i = 0; i < stations.size(); ++i) watched.add(i, networks_of(stations[i]));
  GearComparison comparison{.networks = std::move(watched.networks),
                            .unnamed = std::move(watched.unnamed)};
  keep_likely(comparison.networks, &comparison.unlikely);
  keep_likely(comparison.unnamed, nullptr);
  for (std::size_t gear = 0; gear < chances.size(); ++gear) {
    comparison.gears.push_back({.networks = count_with(comparison.networks, gear),
                                .unnamed = count_with(comparison.unnamed, gear),
                                .only = only_with(chances, gear)});
  }
  return comparison;
}

std::optional<std::size_t> enough(const GearComparison& comparison) {
  const std::size_t networks = comparison.networks.size(), unnamed = comparison.unnamed.size();
  if (networks + unnamed == 0) return std::nullopt;
  for (std::size_t gear = 0; gear < comparison.gears.size(); ++gear) {
    const GearReach& reach = comparison.gears[gear];
    if (reach.networks == networks && reach.unnamed == unnamed) return gear;
  }
  return std::nullopt;
}

}  // namespace mastwise::reception
