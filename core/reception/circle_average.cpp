#include "core/reception/circle_average.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace mastwise::reception {
namespace {

constexpr std::size_t kCircle = ChanceCurve::kHeadings;
constexpr std::size_t kHalfCircle = kCircle / 2;

double wrapped_density(double error_deg, double deviation_deg) {
  constexpr int kTurns = 3;  // beyond, the density of 180 degrees is below 1e-7
  double density = 0.0;
  for (int turn = -kTurns; turn <= kTurns; ++turn) {
    const double deviate = (error_deg + 360.0 * turn) / deviation_deg;
    density += std::exp(-0.5 * deviate * deviate);
  }
  return density;
}

}  // namespace

CircleAverage::CircleAverage(double deviation_deg) {
  constexpr double kMostDeviations = 4.5;
  weights_ = {1.0};
  if (!(deviation_deg > 0.0)) return;
  const double reach_deg = std::ceil(kMostDeviations * deviation_deg);
  const std::size_t reach = reach_deg < static_cast<double>(kHalfCircle)
                                ? static_cast<std::size_t>(reach_deg)
                                : kHalfCircle;
  double sum = 0.0;
  weights_.clear();
  for (std::size_t error = 0; error <= reach; ++error) {
    double weight = wrapped_density(static_cast<double>(error), deviation_deg);
    // Half a circle to either side is the same heading.
    if (error == kHalfCircle) weight /= 2.0;
    weights_.push_back(weight);
    sum += error == 0 ? weight : 2.0 * weight;
  }
  for (double& weight : weights_) weight /= sum;
}

ChanceCurve::Values CircleAverage::operator()(const ChanceCurve::Values& values) const {
  const std::size_t reach = weights_.size() - 1;
  // Unrolled, with the values beyond north on either side, so that the loops run without a wrap.
  std::array<double, 2 * kCircle> straight;
  for (std::size_t i = 0; i < kCircle + 2 * reach; ++i) {
    straight[i] = values[(i + kCircle - reach) % kCircle];
  }
  ChanceCurve::Values mean;
  for (std::size_t h = 0; h < kCircle; ++h) mean[h] = weights_[0] * straight[h + reach];
  for (std::size_t error = 1; error <= reach; ++error) {
    const double weight = weights_[error];
    const double* left = straight.data() + reach - error;
    const double* right = straight.data() + reach + error;
    for (std::size_t h = 0; h < kCircle; ++h) mean[h] += weight * (left[h] + right[h]);
  }
  return mean;
}

}  // namespace mastwise::reception
