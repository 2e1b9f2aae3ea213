#pragma once

#include "core/gear/receive_chain.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/survey.hpp"

#include <array>

namespace mastwise::reception {

// Power in milliwatts of a level in dBm, and back.
double milliwatts(double dbm);
double dbm(double milliwatts);

// Default standard and mode for tables that do not name them: the usual ones in the countries of
// the channel plan.
BroadcastStandard standard_of(const Station& station);

// The kind of channel at the stop: behind houses and trees the picture depends on echoes.
gear::ChannelKind channel_kind(Surroundings surroundings);

// The facts before the path: standard, channel, frequency and band; `missing` if the channel plan
// does not have the channel.
Measurement start_measurement(const Station& station);

// Mean and standard deviation of the loss by the antenna's pattern, dB, for a station `off` degrees
// from the heading aimed at, over a normal heading error of one sigma `error_deg`.
struct HeadingLoss {
  double mean_db = 0.0;
  double deviation_db = 0.0;
};
HeadingLoss heading_loss(const gear::Pattern& pattern, Turn off, double error_deg);

// The gear at the stop, for any station.
class LinkBudget {
 public:
  explicit LinkBudget(Receiver receiver);

  const Receiver& receiver() const { return receiver_; }

  // Loss of an antenna with the other polarization: 15 dB, if the station's is known and linear
  // [common practice: 10 to 20 dB].
  double polarization_loss_db(const Station& station) const;

  // The antenna's response off its axis, at most 0 dB.
  double off_axis_db(Band band, Turn off_axis) const;

  // The gear's requirement in the station's channel; its slot and standard must be known.
  gear::ReceiveChain chain(const Measurement& measurement, bool with_amplifier) const;

  // From the field to power, noise, margin and chance, with the antenna aimed at the station within
  // the heading error, without other stations. Does nothing without a field.
  void apply(const Station& station, Measurement& measurement, bool with_amplifier) const;

 private:
  Receiver receiver_;
  gear::Gear without_amplifier_;
  gear::NoiseSources noise_;
  gear::ChannelKind channel_;
  std::array<HeadingLoss, 3> heading_losses_;  // in the order of Band
};

// The spread of a margin without the interference of others.
Spread own_spread(const Deviations& deviations);

// Margin and chance against the rivals, which the measurement keeps for its reasons.
void conclude(Measurement& measurement, const Rivals& rivals);

}  // namespace mastwise::reception
