#pragma once

namespace mastwise {

// Wavelength in meters of a frequency in MHz, over 0. The speed of light is exact (SI).
constexpr double wavelength_m(double frequency_mhz) {
  constexpr double kMetersTimesMegahertz = 299.792458;
  return kMetersTimesMegahertz / frequency_mhz;
}

}  // namespace mastwise
