#include "core/logbook/nights.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace mastwise {
namespace {

struct Tried {
  std::size_t steady = 0;
  std::size_t all = 0;
  auto operator<=>(const Tried&) const = default;
};

double square(double value) {
  return value * value;
}

}  // namespace

std::vector<Night> nights(std::span<const StopRecord> stops,
                          std::span<const OutcomeRecord> outcomes) {
  std::vector<Night> found;
  for (const StopRecord& stop : stops) {
    Night night{.stop_id = stop.id, .position = stop.position, .arrived = stop.arrived};
    std::map<long, Tried> headings;  // by whole degree
    for (const OutcomeRecord& outcome : outcomes) {
      if (outcome.stop_id != stop.id || outcome.mark.deleted) continue;
      night.outcomes.push_back(outcome.outcome);
      if (!outcome.heading) continue;
      Tried& tried = headings[std::lround(outcome.heading->degrees()) % 360];
      tried.steady += outcome.outcome == Outcome::steady ? 1 : 0;
      ++tried.all;
    }
    if (night.outcomes.empty()) continue;
    std::sort(night.outcomes.begin(), night.outcomes.end());
    const auto best =
        std::max_element(headings.begin(), headings.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    if (best != headings.end()) {
      night.heading = Bearing<True>::degrees(static_cast<double>(best->first));
      night.worked = best->second.steady > 0;
    }
    found.push_back(std::move(night));
  }
  return found;
}

std::optional<WorkedHeading> heading_that_worked(std::span<const Night> nights) {
  std::vector<Bearing<True>> best;
  for (const Night& seed : nights) {
    if (!seed.worked) continue;
    std::vector<Bearing<True>> alike;
    for (const Night& night : nights) {
      if (night.worked && (*night.heading - *seed.heading).size_deg() <= kSameHeading_deg) {
        alike.push_back(*night.heading);
      }
    }
    if (alike.size() > best.size()) best = std::move(alike);
  }
  if (best.empty()) return std::nullopt;
  // Turns from one of them, all at most kSameHeading_deg twice, have an ordinary mean.
  const double count = static_cast<double>(best.size());
  double mean_deg = 0.0, squares = 0.0;
  for (const Bearing<True>& one : best) mean_deg += (one - best.front()).clockwise_deg() / count;
  for (const Bearing<True>& one : best) {
    squares += square((one - best.front()).clockwise_deg() - mean_deg);
  }
  WorkedHeading worked{.heading = best.front() + Turn::clockwise_deg(mean_deg),
                       .nights = best.size()};
  if (best.size() > 1) worked.spread_deg = std::sqrt(squares / (count - 1.0));
  return worked;
}

}  // namespace mastwise
