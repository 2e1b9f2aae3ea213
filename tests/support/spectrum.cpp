#include "tests/support/spectrum.hpp"

#include "core/sound/tone.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace mastwise::test {
namespace {

// Hann's window over the samples.
std::vector<double> windowed(std::span<const float> samples) {
  const auto count = static_cast<double>(samples.size());
  std::vector<double> result;
  for (const float sample : samples) {
    const auto i = static_cast<double>(result.size());
    result.push_back(sample * (0.5 - 0.5 * std::cos(2.0 * std::numbers::pi * i / count)));
  }
  return result;
}

// Goertzel's recursion.
double amplitude_in(const std::vector<double>& faded, double frequency_hz) {
  const double turn = 2.0 * std::numbers::pi * frequency_hz / sound::kRate_hz;
  const double twice = 2.0 * std::cos(turn);
  double last = 0.0, before = 0.0;
  for (const double sample : faded) {
    const double next = sample + twice * last - before;
    before = last;
    last = next;
  }
  const double power = last * last + before * before - twice * last * before;
  return 4.0 * std::sqrt(std::max(0.0, power)) / static_cast<double>(faded.size());
}

}  // namespace

double amplitude_at(std::span<const float> samples, double frequency_hz) {
  return amplitude_in(windowed(samples), frequency_hz);
}

double strongest_hz(std::span<const float> samples, double from_hz, double to_hz) {
  const std::vector<double> faded = windowed(samples);
  double best_hz = from_hz, best = -1.0;
  for (double frequency_hz = from_hz; frequency_hz <= to_hz; frequency_hz += 1.0) {
    const double amplitude = amplitude_in(faded, frequency_hz);
    if (amplitude <= best) continue;
    best = amplitude;
    best_hz = frequency_hz;
  }
  return best_hz;
}

double largest_step(std::span<const float> samples) {
  double largest = 0.0;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    largest = std::max(largest, std::fabs(static_cast<double>(samples[i]) - samples[i - 1]));
  }
  return largest;
}

}  // namespace mastwise::test
