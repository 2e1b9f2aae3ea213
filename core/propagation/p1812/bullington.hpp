#pragma once

#include "core/propagation/p1812/profile_scan.hpp"

namespace mastwise::p1812 {

// The inputs of a Bullington calculation at one effective Earth radius (section 4.3.1).
struct BullingtonView {
  double transmitter_slope = 0.0;  // Stim (13): steepest slope from the transmitter, m/km
  double receiver_slope = 0.0;     // Srim (17): steepest slope from the receiver, m/km
  // Greatest q |q| / (t r) of the profile, see Clearances; only read in line of sight.
  double clearance = 0.0;
};

// Bullington loss Lbulla or Lbulls (21), dB. Distance d in km, wavelength in m, antenna altitudes
// in m.
double bullington_loss_db(const BullingtonView& view, Line antennas, double distance_km,
                          double wavelength_m);

// Lbulls: the same over the smooth surface, whose heights are all 0. `antennas` are the heights
// hts' and hrs' (37) above that surface, m, positive; `bulge` is 500 Ce in m/km^2.
double smooth_bullington_loss_db(const Section& section, Line antennas, double bulge,
                                 double wavelength_m);

}  // namespace mastwise::p1812
