#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>

namespace mastwise::itm {
namespace {

constexpr std::size_t kMostInTenth = 25;
constexpr std::size_t kMostSamples = 10 * kMostInTenth - 5;

// Values by rank. nth_element's partitioning costs a mispredicted jump at every second value.
// Sorting into bins first leaves only the values of one bin to partition.
class Ranks {
 public:
  explicit Ranks(std::span<const double> values) : values_(values) {
    const auto [least, most] = extremes(values);
    const double per_bin = most > least ? (kBins - 1) / (most - least) : 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
      bins_[i] = static_cast<std::uint8_t>((values[i] - least) * per_bin);
      ++counts_[bins_[i]];
    }
  }

  // The smallest value with more than `below` values at or under it.
  double at(std::size_t below) const {
    std::size_t bin = 0;
    for (; below >= counts_[bin]; ++bin) below -= counts_[bin];
    std::array<double, kMostSamples + 1> inside;
    std::size_t count = 0;
    for (std::size_t i = 0; i < values_.size(); ++i) {
      inside[count] = values_[i];
      count += bins_[i] == bin ? 1U : 0U;
    }
    const auto wanted = inside.begin() + static_cast<std::ptrdiff_t>(below);
    std::nth_element(inside.begin(), wanted, inside.begin() + static_cast<std::ptrdiff_t>(count));
    return *wanted;
  }

 private:
  static constexpr std::size_t kBins = 64;

  // Independent lanes, so that none waits for another.
  static std::pair<double, double> extremes(std::span<const double> values) {
    std::array<double, 4> least;
    std::array<double, 4> most;
    least.fill(values.front());
    most.fill(values.front());
    for (std::size_t i = 0; i < values.size(); ++i) {
      double& low = least[i % 4];
      double& high = most[i % 4];
      low = values[i] < low ? values[i] : low;
      high = values[i] > high ? values[i] : high;
    }
    return {*std::min_element(least.begin(), least.end()),
            *std::max_element(most.begin(), most.end())};
  }

  std::span<const double> values_;
  std::array<std::uint8_t, kMostSamples> bins_;
  std::array<std::uint16_t, kBins> counts_ = {};
};

}  // namespace

double irregularity_m(const TerrainProfile& profile, double from, double to) {
  if (to - from < 2) return 0;
  const std::span<const double> heights = profile.heights_m;
  const auto tenth = static_cast<std::size_t>(
      std::clamp(0.1 * (to - from + 8), 4.0, static_cast<double>(kMostInTenth)));
  const std::size_t count = 10 * tenth - 5;

  std::array<double, kMostSamples> samples;
  const double step = (to - from) / static_cast<double>(count - 1);
  for (std::size_t j = 0; j < count; ++j) {
    const double position = from + step * static_cast<double>(j);
    const std::size_t below = std::min(static_cast<std::size_t>(position), heights.size() - 2);
    const double part = position - static_cast<double>(below);
    samples[j] = heights[below] + part * (heights[below + 1] - heights[below]);
  }

  const auto last = static_cast<double>(count - 1);
  const Ends trend = fitted_line(std::span(samples).first(count), 0, last);
  const double rise = (trend.last_m - trend.first_m) / last;
  for (std::size_t j = 0; j < count; ++j) {
    samples[j] -= trend.first_m + rise * static_cast<double>(j);
  }

  const Ranks ranks(std::span<const double>(samples).first(count));
  const double low = ranks.at(tenth - 1);
  const double high = ranks.at(count - tenth);
  const double stretch_m = (to - from) * profile.spacing_m;
  return (high - low) / (1 - 0.8 * std::exp(-stretch_m / 50e3));  // (3.9), solved for Delta h
}

}  // namespace mastwise::itm
