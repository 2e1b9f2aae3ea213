#include "core/propagation/itm/roughness.hpp"

#include <cmath>

namespace mastwise::itm {

double stretch_irregularity_m(double delta_h_m, double stretch_m) {
  constexpr double kFullStretchM = 50e3;
  return (1 - 0.8 * std::exp(-stretch_m / kFullStretchM)) * delta_h_m;  // (3.9)
}

double height_deviation_m(double stretch_irregularity_m) {
  constexpr double kKneeM = 16;
  const double fourth_root = std::sqrt(std::sqrt(stretch_irregularity_m / kKneeM));
  return 0.78 * stretch_irregularity_m * std::exp(-fourth_root);  // (3.10)
}

}  // namespace mastwise::itm
