#include "core/propagation/p1812/ducting_incidence.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

double inland_parameter(double longest_inland_km) {
  return 1.0 - std::exp(-4.12e-4 * std::pow(longest_inland_km, 2.41));  // (3)
}

double ducting_incidence_percent(double longest_land_km, double longest_inland_km,
                                 double path_latitude_deg) {
  const double tau = inland_parameter(longest_inland_km);
  const double latitude_deg = std::fabs(path_latitude_deg);
  const double land = std::pow(10.0, -longest_land_km / (16.0 - 6.6 * tau));
  const double floor = std::pow(10.0, -(2.48 + 1.77 * tau));
  const double mu1 = std::min(1.0, std::pow(land + floor, 0.2));  // (2)
  if (latitude_deg <= 70.0) {
    const double mu4 = std::pow(mu1, -0.935 + 0.0176 * latitude_deg);  // (4a)
    return std::pow(10.0, -0.015 * latitude_deg + 1.67) * mu1 * mu4;   // (5a)
  }
  return 4.17 * mu1 * std::pow(mu1, 0.3);  // (4b), (5b)
}

}  // namespace mastwise::p1812
