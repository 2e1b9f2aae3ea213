#include "core/propagation/p1812/troposcatter.hpp"

#include <cmath>

namespace mastwise::p1812 {

double scatter_median_loss_db(double frequency_ghz, double distance_km,
                              double angular_distance_mrad, double sea_level_refractivity_n) {
  const double half = std::log10(0.5 * frequency_ghz);
  const double frequency_db = 25.0 * std::log10(frequency_ghz) - 2.5 * half * half;  // Lf (45)
  return 190.1 + frequency_db + 20.0 * std::log10(distance_km) + 0.573 * angular_distance_mrad -
         0.15 * sea_level_refractivity_n;  // (44)
}

double scatter_enhancement_db(double time_percent) {
  return 10.125 * std::pow(std::log10(50.0 / time_percent), 0.7);  // (44)
}

}  // namespace mastwise::p1812
