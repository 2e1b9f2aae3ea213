#pragma once

#include "core/propagation/itm/itm.hpp"

#include <array>

namespace mastwise::itm {

// Attenuation of the far field behind rounded obstacles: the rounded-earth form by Vogler's
// three-radii method. Source: Algorithm (4.15) to (4.20).
class RoundedEarth {
 public:
  // Needs the path's wave number, ground impedance and terminals.
  explicit RoundedEarth(const Path& path);

  // A_r in dB, for the distance between the horizons and the bending angle of the ray.
  double attenuation_db(double between_horizons_m, double bend_rad) const;

 private:
  double wave_number_per_m_;
  double impedance_reciprocal_;    // 1 / |Z_g|
  double terminal_arguments_ = 0;  // x_1 + x_2
  double terminal_gains_db_ = 0;   // F(x_1, K_1) + F(x_2, K_2)
};

// A_diff(s): knife edges and rounded earth, weighted by the terrain's irregularity.
// Source: Algorithm (4.9) to (4.14).
class Diffraction {
 public:
  // `mode_height_product_m2` is C of (4.11): 0 in the area mode, 10 point-to-point.
  Diffraction(const Path& path, double mode_height_product_m2);

  // In dB, at a distance beyond the sum of the horizon distances.
  double attenuation_db(double distance_m) const;

 private:
  const Path& path_;
  RoundedEarth rounded_earth_;
  double height_ratio_;         // of effective to structural heights, in (4.11)
  double obstacle_distance_m_;  // d_L + theta_e / gamma_e, in (4.11)
  double clutter_db_;           // A_fo (4.10)
};

}  // namespace mastwise::itm
