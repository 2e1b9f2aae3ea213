#pragma once

#include "core/logbook/record.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

// How well the displayed chances agreed with the outcomes. A chance is that of a steady picture; a
// picture that breaks up counts as none.
namespace mastwise::learning {

// A displayed chance and its outcome.
struct Forecast {
  double chance_percent = 0.0;  // [0, 100]
  bool steady = false;
  Band band = Band::uhf;
  bool operator==(const Forecast&) const = default;
};

// The forecasts of the outcomes that are not deleted and had a chance.
std::vector<Forecast> forecasts(std::span<const OutcomeRecord> outcomes);

struct Interval {
  double low = 0.0;
  double high = 0.0;
  bool operator==(const Interval&) const = default;
};

// The 95 % interval of a rate in [0, 1] from `successes` of `trials` (at least 1). Source: E. B.
// Wilson, Journal of the American Statistical Association 22 (1927) 209.
Interval wilson_interval(std::size_t successes, std::size_t trials);

// One row of the reliability table.
struct ReliabilityBin {
  double from_percent = 0.0;  // up to the next row's, exclusive
  std::size_t forecasts = 0;
  std::size_t steady = 0;
  // std::nullopt in an empty row.
  std::optional<double> mean_chance_percent = {};
  std::optional<double> steady_percent = {};
  std::optional<Interval> interval_percent = {};  // Wilson, 95 %
  bool operator==(const ReliabilityBin&) const = default;
};

// Ten rows: 0 to 10 %, ..., 90 to 100 %, including 100.
std::vector<ReliabilityBin> reliability_table(std::span<const Forecast> forecasts);

// Five rows, one for each word for a chance (reception::chance_word), from out of reach to steady:
// the classes that the screens show.
std::vector<ReliabilityBin> reliability_by_word(std::span<const Forecast> forecasts);

// The Brier score and its parts, for displayed forecasts in whole percent: brier = reliability -
// resolution + uncertainty. Source: A. H. Murphy, Journal of Applied Meteorology 12 (1973) 595.
struct BrierScore {
  double brier = 0.0;        // mean square of chance minus outcome; 0 is perfect
  double reliability = 0.0;  // how far the rates were from the chances
  double resolution = 0.0;   // how far the rates were from the mean rate
  double uncertainty = 0.0;  // of the outcomes themselves
  // Skill over always predicting the mean rate: 1 is perfect, below 0 is worse; std::nullopt if all
  // outcomes were alike.
  std::optional<double> skill = {};
  bool operator==(const BrierScore&) const = default;
};
// std::nullopt without forecasts.
std::optional<BrierScore> brier_score(std::span<const Forecast> forecasts);

}  // namespace mastwise::learning
