#pragma once

#include "core/channels/channels.hpp"
#include "core/gear/gear.hpp"
#include "core/gear/modes.hpp"
#include "core/gear/noise.hpp"

#include <optional>
#include <span>

namespace mastwise::gear {

// The chain from the field at the antenna to the picture, for one channel. Powers are at the
// antenna's terminals.
struct ReceiveChain {
  double noise_figure_db;  // of amplifier, cable, splits and receiver (Friis)
  double noise_bandwidth_hz;
  double external_noise_db;   // Fa, man-made and galactic, over kT0B
  double noise_power_dbm;     // total
  double noise_deviation_db;  // of the total, as man-made noise differs from place to place
  double gain_dbd;            // of the antenna along its axis
  double required_cn_db;
  double required_field_dbuvm;  // on the axis, for a margin of 0 dB
};

// The gear's noise and required field in the channel. The noise is kT0B (f + fa): the chain's noise
// factor with an antenna that sees ground at 290 K, as in the planning factors, plus the external
// noise. Source: ITU-R P.372, system noise factor; FCC Sixth Report and Order App. A for the field.
ReceiveChain receive_chain(const Gear& gear, const ChannelSlot& slot, const Mode& mode,
                           const NoiseSources& sources, ChannelKind channel = ChannelKind::ricean);

// P = E + G - 20 log10 f - 75.06, dBm: the matched power of an antenna in a plane wave, exact to a
// hundredth. `field_dbuvm` any, `gain_dbd` toward the wave, `frequency_mhz` over 0.
double received_power_dbm(double field_dbuvm, double gain_dbd, double frequency_mhz);

// The inverse: the field that gives the power.
double field_for_power_dbuvm(double power_dbm, double gain_dbd, double frequency_mhz);

// An amplifier overloaded by the sum of all signals.
struct Overload {
  double summed_dbm;  // of all signals at the amplifier's input
  double limit_dbm;   // the largest sum without overload
  double excess_db() const { return summed_dbm - limit_dbm; }
};

// The overload, if the received powers, each in dBm at the antenna's terminals, add up to the
// amplifier's limit or more; std::nullopt otherwise and without signals or an amplifier.
std::optional<Overload> overload(const Gear& gear, std::span<const double> received_dbm);

// The sum of powers, each in dBm; std::nullopt for none.
std::optional<double> summed_power_dbm(std::span<const double> powers_dbm);

}  // namespace mastwise::gear
