#include "core/sweep/sweep_posterior.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::aim {
namespace {

constexpr std::size_t kCurveSamples = 60;
constexpr double kCurveStep_deg = 3.0;
constexpr double kBelowBand = 0.025;  // of the probability, as above it

// Three values with the mean and the variance of a normal distribution, and its fourth moment
// [Gauss-Hermite quadrature, Abramowitz and Stegun table 25.10, scaled].
struct ThirdNode {
  double deviate, weight;
};
constexpr std::array kThirds{ThirdNode{-1.7320508, 1.0 / 6.0}, ThirdNode{0.0, 2.0 / 3.0},
                             ThirdNode{1.7320508, 1.0 / 6.0}};

struct Weighted {
  double value, weight;
};

// The value below which this share of the weight lies, between the middles of two neighbors.
double quantile(const std::vector<Weighted>& sorted, double share) {
  double whole = 0.0;
  for (const Weighted& one : sorted) whole += one.weight;
  double before = 0.0, last_middle = 0.0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const double middle = (before + sorted[i].weight / 2.0) / whole;
    if (middle >= share) {
      if (i == 0) return sorted[0].value;
      const double part = (share - last_middle) / (middle - last_middle);
      return sorted[i - 1].value + part * (sorted[i].value - sorted[i - 1].value);
    }
    last_middle = middle;
    before += sorted[i].weight;
  }
  return sorted.back().value;
}

}  // namespace

Result<std::vector<CurvePoint>> SweepFitter::curve(std::span<const Reading> readings,
                                                   const SweepOptions& options) const {
  const auto data = sweep_data(readings, options, pattern_);
  if (!data) return data.error();
  const SweepPosterior posterior(*this, *data);
  const auto samples = posterior.samples(kCurveSamples);
  std::vector<LevelFit> levels;
  for (const auto& sample : samples) levels.push_back(posterior.level_at(sample));
  const auto on_scale = [&](double value) {
    return data->zero + data->units_per_db * std::clamp(value, static_cast<double>(data->least),
                                                        static_cast<double>(data->most));
  };
  std::vector<CurvePoint> curve;
  std::vector<Weighted> values;
  for (double turn = -180.0; turn < 180.0; turn += kCurveStep_deg) {
    const double heading_deg = posterior.peak_deg() + turn;
    values.clear();
    double sum = 0.0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
      const auto response = static_cast<float>(posterior.response_db(samples[i], heading_deg));
      const LevelFit& fit = levels[i];
      const auto mean = static_cast<double>(fit.level[0] + fit.slope[0] * response);
      const auto variance =
          static_cast<double>(fit.level_variance[0] + 2.0F * fit.covariance[0] * response +
                              fit.slope_variance[0] * response * response);
      const double sigma = std::sqrt(std::max(variance, 0.0));
      for (const ThirdNode& node : kThirds) {
        const double value = on_scale(mean + node.deviate * sigma);
        values.push_back({value, node.weight});
        sum += node.weight * value;
      }
    }
    std::sort(values.begin(), values.end(),
              [](const Weighted& a, const Weighted& b) { return a.value < b.value; });
    curve.push_back({.heading = Bearing<Dial>::degrees(heading_deg),
                     .value = sum / static_cast<double>(samples.size()),
                     .low = quantile(values, kBelowBand),
                     .high = quantile(values, 1.0 - kBelowBand)});
  }
  return curve;
}

}  // namespace mastwise::aim
