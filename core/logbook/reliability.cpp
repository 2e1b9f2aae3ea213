#include "core/logbook/reliability.hpp"

#include "core/reception/chance.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace mastwise::learning {
namespace {

constexpr double kNormalDeviate = 1.959963984540054;  // of 97.5 %

double square(double value) {
  return value * value;
}

// Rows that begin at `from_percent`; `row_of` gives the index of a chance's row.
template <class RowOf>
std::vector<ReliabilityBin> counted(std::span<const Forecast> forecasts,
                                    const std::vector<double>& from_percent, RowOf row_of) {
  std::vector<ReliabilityBin> bins(from_percent.size());
  std::vector<double> sums_percent(bins.size(), 0.0);
  for (const Forecast& forecast : forecasts) {
    const std::size_t bin = row_of(forecast.chance_percent);
    ++bins[bin].forecasts;
    bins[bin].steady += forecast.steady ? 1 : 0;
    sums_percent[bin] += forecast.chance_percent;
  }
  for (std::size_t i = 0; i < bins.size(); ++i) {
    ReliabilityBin& bin = bins[i];
    bin.from_percent = from_percent[i];
    if (bin.forecasts == 0) continue;
    const double count = static_cast<double>(bin.forecasts);
    const Interval rate = wilson_interval(bin.steady, bin.forecasts);
    bin.mean_chance_percent = sums_percent[i] / count;
    bin.steady_percent = 100.0 * static_cast<double>(bin.steady) / count;
    bin.interval_percent = {.low = 100.0 * rate.low, .high = 100.0 * rate.high};
  }
  return bins;
}

}  // namespace

std::vector<Forecast> forecasts(std::span<const OutcomeRecord> outcomes) {
  std::vector<Forecast> result;
  for (const OutcomeRecord& outcome : outcomes) {
    if (outcome.mark.deleted || !outcome.chance_percent) continue;
    result.push_back({.chance_percent = *outcome.chance_percent,
                      .steady = outcome.outcome == Outcome::steady,
                      .band = outcome.band});
  }
  return result;
}

Interval wilson_interval(std::size_t successes, std::size_t trials) {
  const double n = static_cast<double>(trials);
  const double rate = static_cast<double>(successes) / n;
  const double z2 = square(kNormalDeviate);
  const double middle = (rate + z2 / (2.0 * n)) / (1.0 + z2 / n);
  const double half =
      kNormalDeviate / (1.0 + z2 / n) * std::sqrt(rate * (1.0 - rate) / n + z2 / (4.0 * n * n));
  return {.low = std::max(0.0, middle - half), .high = std::min(1.0, middle + half)};
}

std::vector<ReliabilityBin> reliability_table(std::span<const Forecast> forecasts) {
  constexpr std::size_t kBins = 10;
  constexpr double kWidth_percent = 100.0 / kBins;
  std::vector<double> from_percent;
  for (std::size_t i = 0; i < kBins; ++i) {
    from_percent.push_back(kWidth_percent * static_cast<double>(i));
  }
  return counted(forecasts, from_percent, [](double chance_percent) {
    const double place = std::max(0.0, chance_percent) / kWidth_percent;
    return std::min(static_cast<std::size_t>(place), kBins - 1);
  });
}

std::vector<ReliabilityBin> reliability_by_word(std::span<const Forecast> forecasts) {
  using reception::ChanceWord;
  return counted(forecasts, {0.0, 10.0, 40.0, 70.0, 90.0}, [](double chance_percent) {
    return static_cast<std::size_t>(ChanceWord::out_of_reach) -
           static_cast<std::size_t>(reception::chance_word(chance_percent));
  });
}

std::optional<BrierScore> brier_score(std::span<const Forecast> forecasts) {
  if (forecasts.empty()) return std::nullopt;
  struct Group {
    double forecasts = 0.0;
    double steady = 0.0;
  };
  std::map<long, Group> groups;
  double steady = 0.0;
  BrierScore score;
  const double count = static_cast<double>(forecasts.size());
  for (const Forecast& forecast : forecasts) {
    const long shown_percent = std::lround(forecast.chance_percent);
    const double seen = forecast.steady ? 1.0 : 0.0;
    groups[shown_percent].forecasts += 1.0;
    groups[shown_percent].steady += seen;
    steady += seen;
    score.brier += square(static_cast<double>(shown_percent) / 100.0 - seen) / count;
  }
  const double mean_rate = steady / count;
  for (const auto& [shown_percent, group] : groups) {
    const double rate = group.steady / group.forecasts;
    const double weight = group.forecasts / count;
    score.reliability += weight * square(static_cast<double>(shown_percent) / 100.0 - rate);
    score.resolution += weight * square(rate - mean_rate);
  }
  score.uncertainty = mean_rate * (1.0 - mean_rate);
  if (score.uncertainty > 0.0) score.skill = 1.0 - score.brier / score.uncertainty;
  return score;
}

}  // namespace mastwise::learning
