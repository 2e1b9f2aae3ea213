// Point-to-point paths per second of the Irregular Terrain Model, on invented hills.
#include "core/propagation/itm/itm.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <vector>

#include <fmt/core.h>

namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

constexpr double kSpacingM = 90;
constexpr std::size_t kProfiles = 16;

// Hills of several lengths with noise, the same on every machine.
std::vector<double> hills(double distance_m, std::uint64_t seed) {
  std::uint64_t state = seed * 0x9e3779b97f4a7c15u + 1;
  const auto random = [&state] {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<double>(state >> 40) / static_cast<double>(1u << 24);
  };
  struct Wave {
    double length_m, height_m, phase;
  };
  std::vector<Wave> waves;
  for (double length_m = 40e3; length_m > 400; length_m /= 2.1) {
    waves.push_back({length_m * (0.8 + 0.4 * random()), 160 * std::pow(length_m / 40e3, 0.7),
                     6.283 * random()});
  }
  std::vector<double> heights_m;
  for (double d = 0; d <= distance_m; d += kSpacingM) {
    double height_m = 400 + 4 * random();
    for (const Wave& wave : waves) {
      height_m += wave.height_m * std::sin(6.283 * d / wave.length_m + wave.phase);
    }
    heights_m.push_back(height_m);
  }
  return heights_m;
}

// Shortest time of several rounds, to exclude other work on the machine.
template <class Work>
double seconds_each(std::size_t count, Work work) {
  double best = 1e9;
  for (int round = 0; round < 40; ++round) {
    const auto begin = Clock::now();
    for (std::size_t i = 0; i < count; ++i) work(i);
    const std::chrono::duration<double> took = Clock::now() - begin;
    best = std::min(best, took.count() / static_cast<double>(count));
  }
  return best;
}

}  // namespace

int main() {
  const itm::Link link = {
      .frequency_mhz = 527, .transmitter_height_m = 150, .receiver_height_m = 4};
  double checksum = 0;
  for (const double distance_km : {25.0, 100.0, 250.0}) {
    std::vector<std::vector<double>> profiles;
    for (std::size_t i = 0; i < kProfiles; ++i) {
      profiles.push_back(hills(1000 * distance_km, i + 1));
    }
    const double each = seconds_each(400, [&](std::size_t i) {
      const auto path = itm::point_to_point(link, {kSpacingM, profiles[i % kProfiles]});
      if (path) checksum += itm::predict(*path, {}, {})->loss_db;
    });
    fmt::print("{:3.0f} km, {:4} points: {:8.0f} paths/s, {:6.2f} us each\n", distance_km,
               profiles[0].size(), 1 / each, 1e6 * each);
  }
  const auto path = itm::point_to_point(link, {kSpacingM, hills(100e3, 1)});
  const double each = seconds_each(10000, [&](std::size_t i) {
    checksum += itm::predict(*path, {}, {.time = 10 + static_cast<double>(i % 80)})->loss_db;
  });
  fmt::print("one more percentage on a known path: {:.2f} us\n", 1e6 * each);
  const double area_each = seconds_each(1000, [&](std::size_t i) {
    checksum +=
        itm::area(link, {}, 1000.0 + 100 * static_cast<double>(i))->reference_attenuation_db;
  });
  fmt::print("area mode: {:.2f} us a path\n", 1e6 * area_each);
  fmt::print("checksum {:.6f}\n", checksum);
}
