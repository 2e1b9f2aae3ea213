#include "core/propagation/itm/limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace mastwise::itm {
namespace {

constexpr std::array<std::pair<Warning, std::string_view>, 14> kNames = {{
    {Warning::transmitter_height, "transmitter_height"},
    {Warning::receiver_height, "receiver_height"},
    {Warning::frequency, "frequency"},
    {Warning::long_path, "long_path"},
    {Warning::short_path, "short_path"},
    {Warning::steep_path, "steep_path"},
    {Warning::transmitter_horizon_steep, "transmitter_horizon_steep"},
    {Warning::receiver_horizon_steep, "receiver_horizon_steep"},
    {Warning::transmitter_horizon_near, "transmitter_horizon_near"},
    {Warning::receiver_horizon_near, "receiver_horizon_near"},
    {Warning::transmitter_horizon_far, "transmitter_horizon_far"},
    {Warning::receiver_horizon_far, "receiver_horizon_far"},
    {Warning::thin_air, "thin_air"},
    {Warning::extreme_quantile, "extreme_quantile"},
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

std::vector<Warning> listed(Warnings set) {
  std::vector<Warning> warnings;
  for (const auto& [warning, name] : kNames) {
    if (has(set, warning)) warnings.push_back(warning);
  }
  return warnings;
}

std::string_view to_text(Warning warning) {
  const auto* const found = std::find_if(kNames.begin(), kNames.end(),
                                         [&](const auto& one) { return one.first == warning; });
  return found == kNames.end() ? std::string_view{} : found->second;
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
