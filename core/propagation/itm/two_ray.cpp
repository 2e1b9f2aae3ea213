#include "core/propagation/itm/decibel.hpp"
#include "core/propagation/itm/line_of_sight.hpp"
#include "core/propagation/itm/roughness.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::itm {
namespace {

// R_e: the ground's effective reflection coefficient at a distance.
std::complex<double> reflection(const Path& path, double distance_m) {
  const double height_sum_m =
      path.terminals[0].effective_height_m + path.terminals[1].effective_height_m;
  const double sin_psi =
      height_sum_m / std::sqrt(distance_m * distance_m + height_sum_m * height_sum_m);  // (4.46)
  const double deviation_m = height_deviation_m(stretch_irregularity_m(path.delta_h_m, distance_m));
  const double roughness = std::min(10.0, path.wave_number_per_m * deviation_m * sin_psi);
  const auto plane = (sin_psi - path.ground_impedance) / (sin_psi + path.ground_impedance) *
                     std::exp(-roughness);  // R'_e (4.47)
  const double power = std::norm(plane);
  if (power < 0.25 || power < sin_psi) return plane * std::sqrt(sin_psi / power);  // (4.48)
  return plane;
}

// delta: the phase lag of the reflected ray, bent to stay below pi.
double phase_lag_rad(const Path& path, double distance_m) {
  const double lag = 2 * path.wave_number_per_m * path.terminals[0].effective_height_m *
                     path.terminals[1].effective_height_m / distance_m;  // (4.49)
  return lag > 1.57 ? 3.14 - 2.4649 / lag : lag;                         // (4.50)
}

}  // namespace

double line_of_sight_db(const Path& path, double distance_m) {
  const double diffracted_db =
      path.diffraction.intercept_db + path.diffraction.slope_db_per_m * distance_m;  // A_d (4.45)
  const auto sum =
      1.0 + reflection(path, distance_m) * std::polar(1.0, phase_lag_rad(path, distance_m));
  const double two_ray_db = -decibel(std::norm(sum));  // A_t (4.51)
  const double weight = 1 / (1 + 47.7 * path.wave_number_per_m * path.delta_h_m /
                                     std::max(10e3, path.smooth_horizon_sum_m));  // w (4.44)
  return (1 - weight) * diffracted_db + weight * two_ray_db;                      // (4.43)
}

}  // namespace mastwise::itm
