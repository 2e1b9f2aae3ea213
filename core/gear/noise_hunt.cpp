#include "core/gear/noise_hunt.hpp"

#include "core/gear/decibels.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace mastwise::gear {
namespace {

constexpr double kLeastSigma_db = 0.3, kSingleSigma_db = 0.5;

// The rise by the appliance that is off at the second of two steps, over the noise at last;
// negative if the meter fell when it was turned off.
double rise_db(double before_db, double after_db, double last_db) {
  constexpr double kLeast = 0.1;
  return to_db(std::max(kLeast, 1.0 + from_db(last_db - before_db) - from_db(last_db - after_db)));
}

}  // namespace

std::optional<MeterMean> mean_of(const NoiseStep& step) {
  const auto& readings = step.readings_db;
  if (readings.empty()) return std::nullopt;
  const auto count = static_cast<double>(readings.size());
  double sum = 0.0, squares = 0.0;
  for (const double reading : readings) sum += reading;
  MeterMean mean{.mean_db = sum / count, .sigma_db = kSingleSigma_db};
  if (readings.size() == 1) return mean;
  for (const double reading : readings) {
    squares += (reading - mean.mean_db) * (reading - mean.mean_db);
  }
  mean.sigma_db = std::max(kLeastSigma_db, std::sqrt(squares / (count - 1.0) / count));
  return mean;
}

std::vector<std::optional<NoiseRise>> noise_rises(std::span<const NoiseStep> steps) {
  std::vector<std::optional<NoiseRise>> rises;
  std::vector<std::optional<MeterMean>> means;
  for (const NoiseStep& step : steps) means.push_back(mean_of(step));
  std::size_t last = means.size();
  while (last > 0 && !means[last - 1]) --last;
  for (std::size_t i = 1; i < means.size(); ++i) {
    auto& rise = rises.emplace_back();
    if (!means[i - 1] || !means[i]) continue;
    const double before = means[i - 1]->mean_db, after = means[i]->mean_db;
    const double end = means[last - 1]->mean_db;
    // Each mean's part of the error, by the rise's change over a decibel. The last mean is after
    // and end at once.
    constexpr double kHalf_db = 0.5;
    const bool is_last = i + 1 == last;
    const auto with = [&](double b, double a, double e) {
      return rise_db(before + b, after + a, end + e);
    };
    const double with_last = is_last ? kHalf_db : 0.0;
    const double by_before =
        means[i - 1]->sigma_db * (with(kHalf_db, 0.0, 0.0) - with(-kHalf_db, 0.0, 0.0));
    const double by_after =
        means[i]->sigma_db * (with(0.0, kHalf_db, with_last) - with(0.0, -kHalf_db, -with_last));
    const double by_end = is_last ? 0.0
                                  : means[last - 1]->sigma_db *
                                        (with(0.0, 0.0, kHalf_db) - with(0.0, 0.0, -kHalf_db));
    rise = NoiseRise{
        .db = std::max(0.0, with(0.0, 0.0, 0.0)),
        .sigma_db = std::sqrt(by_before * by_before + by_after * by_after + by_end * by_end)};
  }
  return rises;
}

NoiseRises rises_of(std::span<const ApplianceNoise> appliances) {
  NoiseRises rises;
  for (const ApplianceNoise& one : appliances) {
    auto& rise = rises[static_cast<std::size_t>(one.band)];
    if (!rise) rise.emplace();
  }
  for (std::size_t band = 0; band < rises.size(); ++band) {
    if (!rises[band]) continue;
    double sum = 1.0, variance = 0.0;
    for (const ApplianceNoise& one : appliances) {
      if (!one.on || static_cast<std::size_t>(one.band) != band) continue;
      sum += from_db(one.rise.db) - 1.0;
    }
    for (const ApplianceNoise& one : appliances) {
      if (!one.on || static_cast<std::size_t>(one.band) != band) continue;
      const double part = one.rise.sigma_db * from_db(one.rise.db) / sum;
      variance += part * part;
    }
    *rises[band] = {.db = to_db(sum), .sigma_db = std::sqrt(variance)};
  }
  return rises;
}

}  // namespace mastwise::gear
