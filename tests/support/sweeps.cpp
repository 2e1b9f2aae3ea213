#include "tests/support/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::test {

double Chance::uniform(double least, double most) {
  constexpr double kSteps = 9007199254740992.0;  // 2^53
  return least + (most - least) * static_cast<double>(engine_() >> 11) / kSteps;
}

double Chance::normal() {
  if (spare_) {
    const double value = *spare_;
    spare_.reset();
    return value;
  }
  const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform(0.0, 1.0)));
  const double angle = uniform(0.0, 2.0 * std::numbers::pi);
  spare_ = radius * std::sin(angle);
  return radius * std::cos(angle);
}

std::size_t Chance::below(std::size_t count) {
  return static_cast<std::size_t>(uniform(0.0, static_cast<double>(count)));
}

MadeSweep quality_sweep(Chance& chance, const gear::Pattern& pattern, double noise_db,
                        bool reflection) {
  const auto power = [pattern](double off_axis_deg) {
    return std::pow(10.0, pattern.relative_db(Turn::clockwise_deg(off_axis_deg)) / 10.0);
  };
  const double peak_deg = chance.uniform(0.0, 360.0);
  const double start_deg = peak_deg + chance.uniform(-40.0, 40.0);
  const double step_deg = chance.uniform(10.0, 15.0);
  const std::size_t count = 8 + chance.below(7);
  const double level = chance.uniform(60.0, 115.0);
  const double points_per_db = chance.uniform(3.0, 5.5);
  const double side = chance.below(2) == 0 ? -1.0 : 1.0;
  const double aside_deg = side * chance.uniform(30.0, 90.0);
  const double part = reflection ? std::pow(10.0, -chance.uniform(6.0, 12.0) / 10.0) : 0.0;

  const auto signal_db = [=](double heading_deg) {
    const double off_deg = heading_deg - peak_deg;
    return 10.0 * std::log10(power(off_deg) + part * power(off_deg - aside_deg));
  };
  MadeSweep sweep{.peak = Bearing<Dial>::degrees(peak_deg)};
  sweep.true_value = [=](double heading_deg) {
    return std::clamp(level + points_per_db * signal_db(heading_deg), 0.0, 100.0);
  };
  for (std::size_t i = 0; i < count; ++i) {
    const double steps = static_cast<double>(i) - static_cast<double>(count - 1) / 2.0;
    const double heading_deg = std::round(start_deg + step_deg * steps);
    const double quality =
        level + points_per_db * (signal_db(heading_deg) + noise_db * chance.normal());
    sweep.readings.push_back({.heading = Bearing<Dial>::degrees(heading_deg),
                              .value = std::round(std::clamp(quality, 0.0, 100.0))});
  }
  return sweep;
}

Coverage coverage_of(const aim::SweepFitter& fitter, const gear::Pattern& pattern,
                     const aim::SweepOptions& options, std::size_t sweeps,
                     const std::function<MadeSweep()>& make) {
  Coverage result;
  std::vector<double> stated_deg;
  for (std::size_t i = 0; i < sweeps; ++i) {
    const MadeSweep sweep = make();
    const auto fit = fitter.fit(sweep.readings, options);
    if (!fit) continue;
    double error_deg = (fit->peak - sweep.peak).size_deg();
    // Both faces of a bidirectional antenna are peaks.
    if (fit->other_face && pattern.front_to_back_db() == 0.0) {
      error_deg = std::min(error_deg, (*fit->other_face - sweep.peak).size_deg());
    }
    ++result.sweeps;
    if (error_deg <= fit->error95_deg) result.covered += 1.0;
    if (fit->second_lobe) result.lobes += 1.0;
    result.rms_error_deg += error_deg * error_deg;
    result.rms_sigma_deg += fit->sigma_deg * fit->sigma_deg;
    stated_deg.push_back(fit->error95_deg);
  }
  const auto count = static_cast<double>(result.sweeps);
  result.covered /= count;
  result.lobes /= count;
  result.rms_error_deg = std::sqrt(result.rms_error_deg / count);
  result.rms_sigma_deg = std::sqrt(result.rms_sigma_deg / count);
  const auto middle = stated_deg.begin() + static_cast<std::ptrdiff_t>(stated_deg.size() / 2);
  std::nth_element(stated_deg.begin(), middle, stated_deg.end());
  result.median_stated_deg = *middle;
  return result;
}

Coverage coverage(const gear::Pattern& pattern, double noise_db, bool reflection,
                  std::size_t sweeps, std::uint64_t seed) {
  const auto fitter = aim::SweepFitter::for_pattern(pattern);
  Chance chance(seed);
  return coverage_of(*fitter, pattern, {.scale = aim::Scale::quality_percent}, sweeps,
                     [&] { return quality_sweep(chance, pattern, noise_db, reflection); });
}

}  // namespace mastwise::test
