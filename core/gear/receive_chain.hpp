#pragma once

#include "core/channels/channels.hpp"
#include "core/gear/gear.hpp"
#include "core/gear/modes.hpp"
#include "core/gear/noise.hpp"

#include <optional>
#include <span>

namespace mastwise::gear {

// From the field at the antenna to the picture, for one channel. Powers are at the antenna's
// terminals.
struct ReceiveChain {
  double noise_figure_db;  // of amplifier, cable, splits and receiver (Friis)
  double noise_bandwidth_hz;
  double external_noise_db;  // Fa, man-made and galactic, over kT0B
  double noise_power_dbm;    // all together
  double gain_dbd;           // of the antenna along its axis
  double required_cn_db;
  double required_field_dbuvm;  // on the axis, for a margin of 0 dB
};

// What the gear needs in the channel. The noise is kT0B (f + fa): the chain's noise factor on an
// antenna that sees ground at 290 K, as the planning factors have it, and the external noise beside
// it. Source: ITU-R P.372, system noise factor; FCC Sixth Report and Order App. A for the field.
ReceiveChain receive_chain(const Gear& gear, const ChannelSlot& slot, const Mode& mode,
                           NoiseEnvironment environment, ChannelKind channel = ChannelKind::ricean);

// P = E + G - 20 log10 f - 75.06: the matched power of an antenna in a plane wave, exact to the
// hundredth. `field_dbuvm` any, `gain_dbd` toward the wave, `frequency_mhz` over 0.
double received_power_dbm(double field_dbuvm, double gain_dbd, double frequency_mhz);

// The other way round: the field that gives the power.
double field_for_power_dbuvm(double power_dbm, double gain_dbd, double frequency_mhz);

// Signals too strong for the amplifier.
struct Overload {
  double summed_dbm;  // of all signals at the amplifier's input
  double limit_dbm;   // that the amplifier stands
  double excess_db() const { return summed_dbm - limit_dbm; }
};

// Where the powers received, each in dBm at the antenna's terminals, add up to the amplifier's
// limit or more; nothing where they do not, where there are none, or without an amplifier.
std::optional<Overload> overload(const Gear& gear, std::span<const double> received_dbm);

// The sum of powers, each in dBm; nothing for none.
std::optional<double> summed_power_dbm(std::span<const double> powers_dbm);

}  // namespace mastwise::gear
