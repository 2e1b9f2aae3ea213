// Sweeps fitted per second, for a narrow beam (the most reflections to try) and a wide one.
#include "core/sweep/sweep.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <vector>

#include <fmt/core.h>

namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

// Twelve readings of quality with a wave of 8 points on them, cut off at the scale's ends.
std::vector<aim::Reading> sweep(const gear::Pattern& pattern, int phase) {
  std::vector<aim::Reading> readings;
  for (int i = 0; i < 12; ++i) {
    const double off = 12.0 * i - 60.0;
    const double wave = 8.0 * std::sin(2.4 * i + phase);
    const double quality = 92.0 + 4.0 * pattern.relative_db(Turn::clockwise_deg(off)) + wave;
    readings.push_back({.heading = Bearing<Dial>::degrees(200.0 + off),
                        .value = std::round(std::clamp(quality, 0.0, 100.0))});
  }
  return readings;
}

// Shortest time of several rounds, to exclude other work on the machine.
void measure(const char* name, const gear::Pattern& pattern) {
  constexpr int kFits = 50;
  const auto fitter = aim::SweepFitter::for_pattern(pattern);
  if (!fitter) return;
  double best_s = 1e9, sum_deg = 0.0;
  for (int round = 0; round < 20; ++round) {
    const auto begin = Clock::now();
    for (int i = 0; i < kFits; ++i) {
      const auto fit = fitter->fit(sweep(pattern, i), {});
      if (fit) sum_deg += fit->sigma_deg;
    }
    const std::chrono::duration<double> took = Clock::now() - begin;
    best_s = std::min(best_s, took.count() / kFits);
  }
  fmt::print("{}: {:.0f} fits/s, {:.1f} us each, mean sigma {:.1f} degrees\n", name, 1.0 / best_s,
             best_s * 1e6, sum_deg / (20 * kFits));
}

}  // namespace

int main() {
  measure("beam of 30 degrees", gear::Pattern::directional(30.0, 17.0));
  measure("beam of 60 degrees", gear::Pattern::directional(60.0, 13.0));
  measure("two faces of 80 degrees", gear::Pattern::bidirectional(80.0, 17.0));
}
