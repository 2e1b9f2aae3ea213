#include "core/propagation/itm/medium.hpp"

#include <cmath>

namespace mastwise::itm {

double wave_number_per_m(double frequency_mhz) {
  constexpr double kUnitFrequencyMhz = 47.7;
  return frequency_mhz / kUnitFrequencyMhz;  // (1.1)
}

double surface_refractivity(double sea_level_refractivity, double mean_elevation_m) {
  constexpr double kScaleHeightM = 9460;
  return sea_level_refractivity * std::exp(-mean_elevation_m / kScaleHeightM);  // (1.2)
}

double earth_curvature_per_m(double surface_refractivity) {
  constexpr double kBareCurvaturePerM = 157e-9;
  constexpr double kRefractivityScale = 179.3;
  return kBareCurvaturePerM *
         (1 - 0.04665 * std::exp(surface_refractivity / kRefractivityScale));  // (1.3)
}

std::complex<double> ground_impedance(const Link& link) {
  constexpr double kFreeSpaceOhm = 376.62;
  const std::complex<double> permittivity(
      link.relative_permittivity,
      kFreeSpaceOhm * link.conductivity_s_per_m / wave_number_per_m(link.frequency_mhz));  // (1.5)
  const auto horizontal = std::sqrt(permittivity - 1.0);
  return link.polarization == Polarization::horizontal ? horizontal
                                                       : horizontal / permittivity;  // (1.4)
}

double free_space_loss_db(double frequency_mhz, double distance_m) {
  return 32.45 + 20 * std::log10(frequency_mhz * distance_m / 1000);
}

}  // namespace mastwise::itm
