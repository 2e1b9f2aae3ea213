#pragma once

#include "core/gear/noise_hunt.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace mastwise::gear {

// The environments of ITU-R P.372, section on man-made noise.
enum class NoiseEnvironment : std::uint8_t { city, residential, rural, quiet_rural };

// "city", "residential", "rural", "quiet rural"; parsing ignores case.
std::string_view to_text(NoiseEnvironment environment);
Result<NoiseEnvironment> parse_noise_environment(std::string_view text);

// What makes noise around the antenna.
struct NoiseSources {
  NoiseEnvironment environment = NoiseEnvironment::rural;
  bool inverter_on = false;  // the rig's own inverter or charger
  // Of the rig's appliances, where they were measured: there it replaces the inverter's figures.
  NoiseRises measured = {};
  NoiseSources() = default;
  // An environment alone, where no inverter runs.
  NoiseSources(NoiseEnvironment around, bool inverter = false, const NoiseRises& rises = {})
      : environment(around), inverter_on(inverter), measured(rises) {}
  bool operator==(const NoiseSources&) const = default;
};

// Median man-made noise figure Fam of an antenna over kT0B, dB; `frequency_mhz` over 0. Up to 250
// MHz the line c - d log10 f of ITU-R P.372, which states it for 0.3 to 250 MHz. Beyond, the
// allowances for TV planning of ITU-R BT.2033-2, table 32, UHF, over a receiver with a noise figure
// of 6 dB: 1 dB in towns (the table's urban case with a matched antenna), which is Fam = 0.1 dB,
// and 0 dB elsewhere: std::nullopt, no noise to count. The table's VHF rows are P.372's city and
// residential lines rounded to whole decibels (noise_test.cpp).
std::optional<double> man_made_noise_figure_db(NoiseEnvironment environment, double frequency_mhz);

// The noise figure of the rig's own inverter or charger, dB; std::nullopt above 250 MHz, where none
// is counted. As loud as P.372's city line [common practice, no source: such devices often dominate
// at VHF, by how much differs from one to the next].
std::optional<double> inverter_noise_figure_db(double frequency_mhz);

// Galactic noise figure Fam = 52 - 23 log10 f, dB; `frequency_mhz` over 0. Source: ITU-R P.372,
// galactic noise.
double galactic_noise_figure_db(double frequency_mhz);

// Power sum of man-made and galactic noise: the antenna's noise beyond the thermal noise of the
// ground. `frequency_mhz` over 0.
double external_noise_figure_db(const NoiseSources& sources, double frequency_mhz);

// Standard deviation of man-made noise from place to place in one environment, dB: the decile
// deviations with location 8.4 (city), 5.8 (residential) and 6.8 (rural) of ITU-R P.372, table 2,
// over 1.2816. The table has no quiet rural row; the rural one is used.
double man_made_deviation_db(NoiseEnvironment environment);

// The same of an inverter, from rig to rig [common practice, no source].
inline constexpr double kInverterDeviation_db = 6.0;

// The noise at the antenna in all: of the receive chain and from outside.
struct TotalNoise {
  double external_db = 0.0;   // noise figure of what comes from outside
  double total_db = 0.0;      // of both together, over kT0B
  double deviation_db = 0.0;  // of the total
};

// With the rig's measured appliances, in a band where there are any: the total without an inverter,
// raised by what was measured. It was measured as a rise over the noise at one stop and is taken
// for the same rise at another. `noise_figure_db`: of the receive chain.
TotalNoise total_noise(const NoiseSources& sources, Band band, double frequency_mhz,
                       double noise_figure_db);

// Standard deviation of the total noise, dB, when only the man-made parts vary: each part's
// deviation times its share of the total. `noise_figure_db`: of the receive chain.
double noise_deviation_db(const NoiseSources& sources, double frequency_mhz,
                          double noise_figure_db);

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
