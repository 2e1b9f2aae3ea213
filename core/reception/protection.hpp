#pragma once

#include "core/channels/channels.hpp"
#include "core/stations/station.hpp"

#include <algorithm>
#include <cstdint>

namespace mastwise::reception {

// Relation of another station's channel to the wanted one.
enum class ChannelRelation : std::uint8_t { apart, same, lower_next, upper_next };

// Channels that share more than 0.5 MHz are the same; those that meet within 0.5 MHz are neighbors.
// Inline, since a survey asks it of every pair of stations.
inline ChannelRelation channel_relation(const ChannelSlot& wanted, const ChannelSlot& other) {
  constexpr double kTolerance_mhz = 0.5;
  const double shared_mhz =
      std::min(wanted.high_mhz, other.high_mhz) - std::max(wanted.low_mhz, other.low_mhz);
  if (shared_mhz > kTolerance_mhz) return ChannelRelation::same;
  if (shared_mhz < -kTolerance_mhz) return ChannelRelation::apart;
  return other.low_mhz < wanted.low_mhz ? ChannelRelation::lower_next : ChannelRelation::upper_next;
}

// Required level of the wanted signal over an interfering one, in dB.
struct Protection {
  double same_channel_db = 0.0;  // if noise is negligible
  double lower_next_db = 0.0;    // the other one is on the channel below
  double upper_next_db = 0.0;
};

// ATSC 1.0: 15, -28 and -26 dB [OET Bulletin 69 table 5A]. OFDM: a signal on the same channel acts
// as noise, so it needs the required carrier-to-noise ratio, whose margin for the receiver counts
// once; for DVB-T, 64QAM 2/3, that is the published 19 to 21 dB [Recommendation ITU-R BT.1368, from
// memory]. Neighbors: -30 dB [cp].
//
// With noise, ATSC 1.0 needs 15 + 10 log(1 / (1 - 10^(-x / 10))) dB on the same channel, with x the
// signal-to-noise ratio above its threshold [OET Bulletin 69]. In powers that is D >= 10^1.5 U +
// 10^(C/N / 10) N: interference adds like noise, each weighted with its ratio. The survey adds it
// this way for every standard and any number of stations.
Protection protection(BroadcastStandard standard, double required_cn_db);

// The ratio for one relation, which must not be `apart`.
double ratio_db(const Protection& protection, ChannelRelation relation);

// How much later than the first an echo, or another transmitter of the same program, may arrive to
// add to the signal: the guard interval of the usual mode, or the equalizer's reach, microseconds.
// ATSC 1.0: 40 [ATSC A/74, from memory]. OFDM, from memory: ATSC 3.0 148 (1024 samples), DVB-T 112
// (8k, 1/8), DVB-T2 224 (32k, 1/16), ISDB-T 126 (mode 3, 1/8).
double echo_reach_us(BroadcastStandard standard);

}  // namespace mastwise::reception
