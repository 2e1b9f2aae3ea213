#include "core/propagation/itm/terminals.hpp"

#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::itm {
namespace {

double smooth_horizon_m(double effective_height_m, double curvature_per_m) {
  return std::sqrt(2 * effective_height_m / curvature_per_m);  // (3.5)
}

// Likely horizons for the terrain's irregularity; returns the sum of their distances.
double place_likely_horizons(Path& path) {
  for (Terminal& terminal : path.terminals) {
    const double height_m = terminal.effective_height_m;
    terminal.smooth_horizon_distance_m = smooth_horizon_m(height_m, path.earth_curvature_per_m);
    terminal.horizon_distance_m =
        terminal.smooth_horizon_distance_m *
        std::exp(-0.07 * std::sqrt(path.delta_h_m / std::max(height_m, 5.0)));  // (3.3)
  }
  return path.terminals[0].horizon_distance_m + path.terminals[1].horizon_distance_m;
}

void tilt_likely_horizons(Path& path) {
  for (Terminal& terminal : path.terminals) {
    const double smooth_m = terminal.smooth_horizon_distance_m;
    terminal.horizon_angle_rad =
        (0.65 * path.delta_h_m * (smooth_m / terminal.horizon_distance_m - 1) -
         2 * terminal.effective_height_m) /
        smooth_m;  // (3.4)
  }
}

void raise_above(Terminal& terminal, double ground_m, double line_m) {
  terminal.effective_height_m = terminal.structural_height_m + std::max(ground_m - line_m, 0.0);
}

// One line through the whole terrain reflects. The path does not show the horizons, so likely ones
// are used, far enough for the terminals to see each other.
void place_in_sight(Path& path, const TerrainProfile& profile, double from, double to) {
  const Ends line = fitted_line(profile.heights_m, from, to);
  raise_above(path.terminals[0], profile.heights_m.front(), line.first_m);
  raise_above(path.terminals[1], profile.heights_m.back(), line.last_m);
  const double reach_m = place_likely_horizons(path);
  if (reach_m <= path.distance_m) {
    const double stretch = path.distance_m / reach_m;
    for (Terminal& terminal : path.terminals) terminal.effective_height_m *= stretch * stretch;
    place_likely_horizons(path);
  }
  tilt_likely_horizons(path);
}

// Each terminal has a separate line, through the terrain up to nine tenths of its horizon distance.
void place_behind_horizons(Path& path, const TerrainProfile& profile, double from, double to) {
  auto& [transmitter, receiver] = path.terminals;
  const double near = 0.9 * transmitter.horizon_distance_m / profile.spacing_m;
  const double far = (path.distance_m - 0.9 * receiver.horizon_distance_m) / profile.spacing_m;
  raise_above(transmitter, profile.heights_m.front(),
              fitted_line(profile.heights_m, from, near).first_m);
  raise_above(receiver, profile.heights_m.back(), fitted_line(profile.heights_m, far, to).last_m);
}

}  // namespace

void place_on_profile(Path& path, const TerrainProfile& profile, const Relief& relief) {
  const auto found = horizons(path, profile, relief);
  for (std::size_t end = 0; end < 2; ++end) {
    path.terminals[end].horizon_distance_m = found[end].distance_m;
    path.terminals[end].horizon_angle_rad = found[end].angle_rad;
  }
  // The ground close to an antenna does not count as the path's terrain.
  const auto foreground_m = [](const Terminal& terminal) {
    return std::min(15 * terminal.structural_height_m, 0.1 * terminal.horizon_distance_m);
  };
  const double from = foreground_m(path.terminals[0]) / profile.spacing_m;
  const double to = (path.distance_m - foreground_m(path.terminals[1])) / profile.spacing_m;
  path.delta_h_m = irregularity_m(profile, from, to);
  if (found[0].distance_m + found[1].distance_m > 1.5 * path.distance_m) {
    place_in_sight(path, profile, from, to);
  } else {
    place_behind_horizons(path, profile, from, to);
  }
}

void place_in_area(Path& path, const AreaTerrain& terrain) {
  path.delta_h_m = terrain.delta_h_m;
  const std::array<Siting, 2> sitings = {terrain.transmitter_siting, terrain.receiver_siting};
  for (std::size_t end = 0; end < 2; ++end) {
    Terminal& terminal = path.terminals[end];
    const double height_m = terminal.structural_height_m;
    if (sitings[end] == Siting::random) {
      terminal.effective_height_m = height_m;
      continue;
    }
    double gain_m = sitings[end] == Siting::careful ? 4 : 9;
    if (height_m < 5) gain_m *= std::sin(std::numbers::pi / 10 * height_m);  // (3.1)
    terminal.effective_height_m =
        height_m +
        (1 + gain_m) *
            std::exp(-std::min(20.0, 2 * height_m / std::max(1e-3, path.delta_h_m)));  // (3.2)
  }
  place_likely_horizons(path);
  tilt_likely_horizons(path);
}

void sum_terminals(Path& path) {
  for (Terminal& terminal : path.terminals) {
    terminal.smooth_horizon_distance_m =
        smooth_horizon_m(terminal.effective_height_m, path.earth_curvature_per_m);
  }
  const auto& [transmitter, receiver] = path.terminals;
  path.smooth_horizon_sum_m =
      transmitter.smooth_horizon_distance_m + receiver.smooth_horizon_distance_m;     // (3.6)
  path.horizon_sum_m = transmitter.horizon_distance_m + receiver.horizon_distance_m;  // (3.7)
  path.horizon_angle_sum_rad = std::max(transmitter.horizon_angle_rad + receiver.horizon_angle_rad,
                                        -path.horizon_sum_m * path.earth_curvature_per_m);  // (3.8)
}

}  // namespace mastwise::itm
