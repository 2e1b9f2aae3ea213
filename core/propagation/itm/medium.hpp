#pragma once

#include "core/propagation/itm/itm.hpp"

#include <complex>

namespace mastwise::itm {

// k, radians per meter, for 20 to 20,000 MHz. Source: Algorithm (1.1).
double wave_number_per_m(double frequency_mhz);

// N_s in N-units from the sea-level value and the terrain's mean height. Source: Algorithm (1.2).
double surface_refractivity(double sea_level_refractivity, double mean_elevation_m);

// gamma_e, the effective earth curvature for a ray. Source: Algorithm (1.3).
double earth_curvature_per_m(double surface_refractivity);

// Z_g, the ground's transfer impedance relative to free space. Source: Algorithm (1.4), (1.5).
std::complex<double> ground_impedance(const Link& link);

// Basic transmission loss of free space, in dB. Source: Recommendation ITU-R P.525, 32.45 dB form.
double free_space_loss_db(double frequency_mhz, double distance_m);

}  // namespace mastwise::itm
