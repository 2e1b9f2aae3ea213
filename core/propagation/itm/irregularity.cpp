#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace mastwise::itm {
namespace {

constexpr std::size_t kMostInTenth = 25;
constexpr std::size_t kMostSamples = 10 * kMostInTenth - 5;

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

  const auto begin = samples.begin();
  const auto end = begin + static_cast<std::ptrdiff_t>(count);
  const auto low = begin + static_cast<std::ptrdiff_t>(tenth - 1);
  const auto high = begin + static_cast<std::ptrdiff_t>(count - tenth);
  std::nth_element(begin, low, end);
  std::nth_element(low + 1, high, end);
  const double stretch_m = (to - from) * profile.spacing_m;
  return (*high - *low) / (1 - 0.8 * std::exp(-stretch_m / 50e3));  // (3.9), solved for Delta h
}

}  // namespace mastwise::itm
