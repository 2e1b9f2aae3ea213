#include "core/sweep/sweep_posterior.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace mastwise::aim {
namespace {

constexpr std::size_t kSamples = 40;
constexpr double kCandidateStepDeg = 5.0;
constexpr double kSameHeadingDeg = 4.0;
constexpr double kRepeatWorth = 1.25;
// Turning the antenna up to this angle has the same cost; each further such angle makes a reading
// that much more expensive [a free choice, no source].
constexpr double kEasyTurnDeg = 90.0;

// The expected meter reading of one sample of the posterior.
struct Expected {
  double off_deg;  // of its peak from the posterior's, at most a beamwidth
  double mean;
  double variance;
};

// The remaining variance of the peak after a meter reading of `value`.
double variance_left(const std::vector<Expected>& expected, double value) {
  double sum = 0.0, first = 0.0, second = 0.0;
  for (const Expected& one : expected) {
    const double miss = value - one.mean;
    const double likelihood = std::exp(-0.5 * miss * miss / one.variance) / std::sqrt(one.variance);
    sum += likelihood;
    first += likelihood * one.off_deg;
    second += likelihood * one.off_deg * one.off_deg;
  }
  if (!(sum > 0.0)) return 0.0;  // so far from all samples that a single one would explain it
  return std::max(second / sum - first * first / (sum * sum), 0.0);
}

}  // namespace

Result<Bearing<Dial>> SweepFitter::next_heading(std::span<const Reading> readings,
                                                const SweepOptions& options) const {
  const auto data = sweep_data(readings, options, pattern_);
  if (!data) return data.error();
  const SweepPosterior posterior(*this, *data);
  const auto chosen = posterior.samples(kSamples);
  std::vector<LevelFit> levels;
  for (const auto& sample : chosen) levels.push_back(posterior.level_at(sample));

  // The mean remaining variance, with each sample as the truth and the noise one sigma up and down.
  // Beyond the ends of the scale the meter distinguishes nothing.
  const auto expected_variance = [&](double heading_deg) {
    std::vector<Expected> expected;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
      const auto response = static_cast<float>(posterior.response_db(chosen[i], heading_deg));
      const LevelFit& fit = levels[i];
      const float mean = fit.level[0] + fit.slope[0] * response;
      const float variance = fit.noise_variance[0] + fit.level_variance[0] +
                             2.0F * fit.covariance[0] * response +
                             fit.slope_variance[0] * response * response;
      const double off = posterior.off_deg(chosen[i].peak_deg, posterior.peak_deg());
      expected.push_back({std::clamp(off, -beamwidth_deg_, beamwidth_deg_),
                          static_cast<double>(std::clamp(mean, data->least, data->most)),
                          static_cast<double>(std::max(variance, fit.noise_variance[0]))});
    }
    double sum = 0.0;
    for (const Expected& truth : expected) {
      const double sigma = std::sqrt(truth.variance);
      sum += variance_left(expected, truth.mean + sigma);
      sum += variance_left(expected, truth.mean - sigma);
    }
    return sum / static_cast<double>(2 * expected.size());
  };
  double now = 0.0;
  for (const auto& place : posterior.places()) {
    const double off = std::min(std::fabs(posterior.off_deg(place.peak_deg, posterior.peak_deg())),
                                beamwidth_deg_);
    now += place.mass * off * off;
  }
  const auto effort = [&](Bearing<Dial> heading) {
    if (readings.empty()) return 1.0;
    const double turn = (heading - readings.back().heading).size_deg();
    return std::max(1.0, turn / kEasyTurnDeg);
  };
  double best_gain = -std::numeric_limits<double>::infinity();
  double best_deg = data->arc_start_deg;
  for (double step = 0.0; step < 360.0; step += kCandidateStepDeg) {
    const auto heading = Bearing<Dial>::degrees(std::round(posterior.peak_deg()) + step);
    const bool repeats = std::any_of(readings.begin(), readings.end(), [&](const Reading& one) {
      return (one.heading - heading).size_deg() < kSameHeadingDeg;
    });
    const double gain = (now - expected_variance(heading.degrees())) /
                        ((repeats ? kRepeatWorth : 1.0) * effort(heading));
    if (gain <= best_gain) continue;
    best_gain = gain;
    best_deg = heading.degrees();
  }
  return Bearing<Dial>::degrees(best_deg);
}

}  // namespace mastwise::aim
