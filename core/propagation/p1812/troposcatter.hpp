#pragma once

namespace mastwise::p1812 {

// Troposcatter (section 4.4), dB, in two parts: Lbs (44) = median - enhancement(p).
// f in GHz, d in km, theta in mrad, N0 in N-units.
double scatter_median_loss_db(double frequency_ghz, double distance_km,
                              double angular_distance_mrad, double sea_level_refractivity_n);

// The gain over the median at p percent of time, within (0, 50].
double scatter_enhancement_db(double time_percent);

}  // namespace mastwise::p1812
