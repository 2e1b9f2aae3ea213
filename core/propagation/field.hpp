#pragma once

#include <cmath>

namespace mastwise {

// Field strength in dBuV/m from 1 kW of effective radiated power (over a half-wave dipole) at the
// end of a path with that basic transmission loss, in dB between isotropic antennas.
// `frequency_mhz` is over 0. Source: Recommendation ITU-R P.1812, equation (70), with its constant
// of 199.36 for a frequency in GHz.
inline double field_of_1kw_dbuvm(double basic_loss_db, double frequency_mhz) {
  return 199.36 + 20.0 * std::log10(frequency_mhz / 1000.0) - basic_loss_db;
}

}  // namespace mastwise
