#pragma once

namespace mastwise::reception {

// Clutter along every path whose land cover is unknown, m above ground: houses and low trees
// [Recommendation ITU-R P.1812 table 2, suburban], as in the country where the curves below were
// measured.
inline constexpr double kUsualClutter_m = 10.0;

// What the models know of the path.
enum class Knowledge { profile, irregularity_only };

// How many dB the computed field lies above the regulator's measured curves in average country [47
// CFR 73.699], for a path of that length; negative: below them. To be subtracted from the field.
//
// A table by band and distance, to half a decibel and within one of the mean difference over
// heights above average terrain of 120 to 610 m, for half and a tenth of the time, in hills of 50 m
// as the curves assume (half of them regular, half random with a natural spectrum), with clutter of
// kUsualClutter_m in P.1812 and the air of a continental temperate climate. Without a profile, that
// of the terrain model's area mode over hills of 90 m. Linear over distance and the logarithm of
// frequency between the planning frequencies of the bands (69, 194 and 615 MHz); constant beyond
// the table, falling to 0 at the transmitter. It mostly corrects for houses and trees that no
// profile shows: 5 dB in UHF and next to nothing in low VHF, whose waves bend around them; far
// beyond the horizon, the models' diffraction and scatter.
double above_measured_curves_db(Knowledge knowledge, double frequency_mhz, double distance_m);

// The standard deviation of what remains between the corrected field and the curves, dB.
double remaining_deviation_db(Knowledge knowledge);

}  // namespace mastwise::reception
