#pragma once

#include "core/propagation/p1812/p1812.hpp"

namespace mastwise::p1812 {

// A path over a smooth spherical Earth (sections 4.3.2 and 4.3.3).
struct SphericalPath {
  double distance_km = 0.0;
  double frequency_ghz = 0.0;
  double wavelength_m = 0.0;
  double earth_radius_km = 0.0;       // ap, effective
  double transmitter_height_m = 0.0;  // hte over the smooth surface, positive
  double receiver_height_m = 0.0;     // hre, positive
  double sea_fraction = 0.0;          // omega
  Polarization polarization = Polarization::horizontal;
};

// Ldsph (27) in dB, never negative.
double spherical_earth_loss_db(const SphericalPath& path);

}  // namespace mastwise::p1812
