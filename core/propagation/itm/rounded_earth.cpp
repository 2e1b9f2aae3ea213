#include "core/propagation/itm/decibel.hpp"
#include "core/propagation/itm/diffraction.hpp"

#include <cmath>

namespace mastwise::itm {
namespace {

// A of (4.18): gives x = f^(1/3) C^2 B d of NBS Technical Note 101, 8.2, for f in MHz, d in km and
// C^3 = 4/3 x 6370 km / radius.
constexpr double kArgumentScale = 150.9703;
// C_1 of (4.20), for the small impedances of real ground.
constexpr double kOffsetDb = 20;

// B(K): reduction of the argument by the ground's impedance (6.2).
double impedance_factor(double k) {
  return 1.607 - k;
}

// G(x): the field deep in the shadow (6.8).
double shadow_db(double x) {
  return 0.05751 * x - decibel(x);
}

// The field of a terminal close to the ground, before the shadow's asymptote is reached.
double near_db(double x, double k) {
  const double w = -std::log(k);
  if (k < 1e-5 || x * w * w * w > 5495) {
    return x > 1 ? 4 * decibel(x) - 117 : -117;  // (6.5)
  }
  return 2.5e-5 * x * x / k - 2 * decibel(1 / k) - 15;  // (6.6)
}

// F(x, K): height gain of one terminal, (6.3) to (6.7).
double height_gain_db(double x, double k) {
  if (x < 200) return near_db(x, k);
  const double shadow = shadow_db(x);
  if (x >= 2000) return shadow;
  const double w = 0.0134 * x * std::exp(-0.005 * x);
  return (1 - w) * shadow + w * (4 * decibel(x) - 117);
}

}  // namespace

RoundedEarth::RoundedEarth(const Path& path)
    : wave_number_per_m_(path.wave_number_per_m),
      impedance_reciprocal_(1 / std::abs(path.ground_impedance)) {
  for (const Terminal& terminal : path.terminals) {
    const double radius_m = 0.5 * terminal.horizon_distance_m * terminal.horizon_distance_m /
                            terminal.effective_height_m;            // 1 / gamma_j (4.15)
    const double alpha = std::cbrt(radius_m * wave_number_per_m_);  // (4.16)
    const double k = impedance_reciprocal_ / alpha;                 // K_j (4.17)
    const double x = kArgumentScale * impedance_factor(k) * alpha * terminal.horizon_distance_m /
                     radius_m;  // x_j (4.18)
    terminal_arguments_ += x;
    terminal_gains_db_ += height_gain_db(x, k);
  }
}

double RoundedEarth::attenuation_db(double between_horizons_m, double bend_rad) const {
  const double radius_m = between_horizons_m / bend_rad;          // 1 / gamma_0 (4.15)
  const double alpha = std::cbrt(radius_m * wave_number_per_m_);  // (4.16)
  const double k = impedance_reciprocal_ / alpha;                 // K_0 (4.17)
  const double x =
      kArgumentScale * impedance_factor(k) * alpha * bend_rad + terminal_arguments_;  // (4.19)
  return shadow_db(x) - terminal_gains_db_ - kOffsetDb;                               // (4.20)
}

}  // namespace mastwise::itm
