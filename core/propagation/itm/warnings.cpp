#include "core/propagation/itm/limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace mastwise::itm {
namespace {

constexpr std::array<std::pair<Warning, std::string_view>, 14> kWords = {{
    {Warning::transmitter_height, "The transmitter's height is outside 1 to 1,000 m."},
    {Warning::receiver_height, "The receiver's height is outside 1 to 1,000 m."},
    {Warning::frequency, "The frequency is outside 40 to 10,000 MHz."},
    {Warning::long_path, "The path is longer than 1,000 km."},
    {Warning::short_path, "The path is shorter than 1 km."},
    {Warning::steep_path, "The ray between the antennas is steeper than the model was made for."},
    {Warning::transmitter_horizon_steep,
     "The transmitter's horizon is more than 0.2 rad (11 degrees) up or down."},
    {Warning::receiver_horizon_steep,
     "The receiver's horizon is more than 0.2 rad (11 degrees) up or down."},
    {Warning::transmitter_horizon_near,
     "The transmitter's horizon is closer than a tenth of that on a smooth earth."},
    {Warning::receiver_horizon_near,
     "The receiver's horizon is closer than a tenth of that on a smooth earth."},
    {Warning::transmitter_horizon_far,
     "The transmitter's horizon is farther than three times that on a smooth earth."},
    {Warning::receiver_horizon_far,
     "The receiver's horizon is farther than three times that on a smooth earth."},
    {Warning::thin_air, "The ground is so high that the refractivity is below 250 N-units."},
    {Warning::extreme_quantile, "A percentage is too close to 0 or 100 to be sure of."},
}};

Warnings bit_if(bool condition, Warning warning) {
  return condition ? static_cast<Warnings>(warning) : 0;
}

// The same warning for transmitter and receiver.
struct Pair {
  Warning transmitter;
  Warning receiver;

  Warnings when(const Path& path, bool (*condition)(const Terminal&)) const {
    return bit_if(condition(path.terminals[0]), transmitter) |
           bit_if(condition(path.terminals[1]), receiver);
  }
};

Warnings terminal_warnings(const Path& path) {
  constexpr Pair kHeight{Warning::transmitter_height, Warning::receiver_height};
  constexpr Pair kSteep{Warning::transmitter_horizon_steep, Warning::receiver_horizon_steep};
  constexpr Pair kNear{Warning::transmitter_horizon_near, Warning::receiver_horizon_near};
  constexpr Pair kFar{Warning::transmitter_horizon_far, Warning::receiver_horizon_far};
  return kHeight.when(path, [](const Terminal& one) {
    return one.structural_height_m < 1 || one.structural_height_m > 1000;
  }) | kSteep.when(path, [](const Terminal& one) {
    return std::abs(one.horizon_angle_rad) > 0.2;
  }) | kNear.when(path, [](const Terminal& one) {
    return one.horizon_distance_m < 0.1 * one.smooth_horizon_distance_m;
  }) | kFar.when(path, [](const Terminal& one) {
    return one.horizon_distance_m > 3 * one.smooth_horizon_distance_m;
  });
}

}  // namespace

std::string_view words(Warning warning) {
  const auto* const found = std::find_if(kWords.begin(), kWords.end(),
                                         [&](const auto& one) { return one.first == warning; });
  return found == kWords.end() ? std::string_view{} : found->second;
}

std::vector<std::string_view> words(Warnings set) {
  std::vector<std::string_view> sentences;
  for (const auto& [warning, sentence] : kWords) {
    if (has(set, warning)) sentences.push_back(sentence);
  }
  return sentences;
}

std::string_view words(Range range) {
  switch (range) {
    case Range::line_of_sight:
      return "within the smooth earth's line of sight";
    case Range::diffraction:
      return "bent around the terrain by diffraction";
    case Range::scatter:
      return "scattered by the air beyond the horizons";
  }
  return {};
}

Warnings path_warnings(const Path& path) {
  constexpr double kSteepestRay = 0.2;
  const double climb_m =
      std::abs(path.terminals[0].effective_height_m - path.terminals[1].effective_height_m);
  return terminal_warnings(path) |
         bit_if(path.frequency_mhz < 40 || path.frequency_mhz > 10000, Warning::frequency) |
         bit_if(path.distance_m > 1e6, Warning::long_path) |
         bit_if(path.distance_m < 1e3, Warning::short_path) |
         bit_if(path.distance_m < climb_m / kSteepestRay, Warning::steep_path) |
         bit_if(path.surface_refractivity < 250, Warning::thin_air);
}

Warnings deviate_warnings(double time, double location, double situation) {
  constexpr double kSure = 3.1;
  return bit_if(std::max({std::abs(time), std::abs(location), std::abs(situation)}) > kSure,
                Warning::extreme_quantile);
}

}  // namespace mastwise::itm
