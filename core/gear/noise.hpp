#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace mastwise::gear {

// The environments of ITU-R P.372, section on man-made noise.
enum class NoiseEnvironment : std::uint8_t { city, residential, rural, quiet_rural };

// "city", "residential", "rural", "quiet rural".
std::string_view to_text(NoiseEnvironment environment);

// Median man-made noise figure Fam = c - d log10 f of an antenna over kT0B, dB; `frequency_mhz`
// over 0. Source: ITU-R P.372, man-made noise, c and d by environment. The Recommendation gives the
// line for 0.3 to 250 MHz; extrapolated beyond, it falls below what matters to a receiver.
double man_made_noise_figure_db(NoiseEnvironment environment, double frequency_mhz);

// Galactic noise figure Fam = 52 - 23 log10 f, dB; `frequency_mhz` over 0. Source: ITU-R P.372,
// galactic noise.
double galactic_noise_figure_db(double frequency_mhz);

// Power sum of man-made and galactic noise: the antenna's noise beyond the thermal noise of the
// ground. `frequency_mhz` over 0.
double external_noise_figure_db(NoiseEnvironment environment, double frequency_mhz);

// kT0B at T0 = 290 K; `noise_bandwidth_hz` over 0. Source: ITU-R P.372, reference temperature; the
// Boltzmann constant of the SI.
double thermal_noise_dbm(double noise_bandwidth_hz);

// One stage of a chain: an amplifier, or a loss at 290 K as a negative gain and a noise figure
// equal to the loss.
struct Stage {
  double gain_db;
  double noise_figure_db;
};
Stage loss_stage(double loss_db);

// The noise figure of stages in signal order, referred to the first one's input: Friis, f = f1 +
// (f2 - 1) / g1 + ...; 0 dB without stages.
double cascade_noise_figure_db(std::span<const Stage> stages);

}  // namespace mastwise::gear
