#include "core/propagation/itm/diffraction.hpp"

#include "core/propagation/itm/decibel.hpp"
#include "core/propagation/itm/knife_edge.hpp"
#include "core/propagation/itm/roughness.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::itm {
namespace {

constexpr double kPi = 3.141592653589793;

// A_fo: the clutter of even a smooth path, at most 15 dB.
double clutter_db(const Path& path, double structural_product_m2) {
  constexpr double kPerSquareMeter = 4.77e-4;
  const double deviation_m =
      height_deviation_m(stretch_irregularity_m(path.delta_h_m, path.smooth_horizon_sum_m));
  return std::min(15.0, 0.5 * decibel(1 + kPerSquareMeter * structural_product_m2 *
                                              path.wave_number_per_m * deviation_m));  // (4.10)
}

}  // namespace

Diffraction::Diffraction(const Path& path, double mode_height_product_m2)
    : path_(path), rounded_earth_(path) {
  const auto& [transmitter, receiver] = path.terminals;
  const double structural_m2 = transmitter.structural_height_m * receiver.structural_height_m;
  const double effective_m2 = transmitter.effective_height_m * receiver.effective_height_m;
  height_ratio_ = std::sqrt((effective_m2 + mode_height_product_m2) /
                            (structural_m2 + mode_height_product_m2));  // (4.11)
  obstacle_distance_m_ =
      path.horizon_sum_m + path.horizon_angle_sum_rad / path.earth_curvature_per_m;  // (4.11)
  clutter_db_ = clutter_db(path, structural_m2);
}

double Diffraction::attenuation_db(double distance_m) const {
  const double bend_rad =
      path_.horizon_angle_sum_rad + distance_m * path_.earth_curvature_per_m;  // theta (4.12)
  const double between_m = distance_m - path_.horizon_sum_m;

  double knife_edges_db = 0;
  const double strength = path_.wave_number_per_m / (4 * kPi) * bend_rad * bend_rad * between_m;
  for (const Terminal& terminal : path_.terminals) {
    const double horizon_m = terminal.horizon_distance_m;
    knife_edges_db += knife_edge_db(strength * horizon_m / (between_m + horizon_m));  // (4.13-14)
  }

  const double irregularity = std::min(
      stretch_irregularity_m(path_.delta_h_m, distance_m) * path_.wave_number_per_m, 6283.2);
  const double q = irregularity * (height_ratio_ + obstacle_distance_m_ / distance_m);
  const double weight = 25.1 / (25.1 + std::sqrt(q));  // w (4.11)
  return weight * rounded_earth_.attenuation_db(between_m, bend_rad) +
         (1 - weight) * knife_edges_db + clutter_db_;  // (4.9)
}

}  // namespace mastwise::itm
