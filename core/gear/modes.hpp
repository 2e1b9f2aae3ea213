#pragma once

#include "core/stations/station.hpp"

#include <cstdint>
#include <span>
#include <string_view>

namespace mastwise::gear {

// What reaches the antenna: a signal with noise only; a direct wave with weak echoes, as on a mast
// with a view; or echoes only, as behind buildings and trees.
enum class ChannelKind : std::uint8_t { gaussian, ricean, rayleigh };

// How reliable a figure is.
enum class Basis : std::uint8_t {
  published,        // read from the named publication
  from_memory,      // from the named publication, not compared with it
  common_practice,  // of the trade, no source
};

// A transmission mode of a standard.
struct Mode {
  BroadcastStandard standard;
  std::string_view name;  // "64QAM 3/4", "8-VSB"
  double gaussian_cn_db;  // as in the source
  double ricean_cn_db;
  double rayleigh_cn_db;
  double implementation_margin_db;  // of real receivers above the source's figures
  Basis basis;                      // of the Gaussian figure
  Basis echoes_basis;               // of the other two
  std::string_view source;

  // The lowest carrier-to-noise ratio with a picture, dB.
  double required_cn_db(ChannelKind channel) const;
};

// Every known mode of the standard, by modulation, the most robust first.
std::span<const Mode> modes(BroadcastStandard standard);

// The mode to assume for a station whose mode is unknown: the one most used for the main programs
// [common practice, no source].
const Mode& default_mode(BroadcastStandard standard);

// The receiver's noise bandwidth; `channel_bandwidth_mhz` is 6, 7 or 8 for all but ATSC (6). ATSC
// 1.0 fills the whole channel [FCC Sixth Report and Order App. A]; ATSC 3.0 5.83 of 6 MHz, DVB-T
// 7.61 of 8 MHz [EN 300 744], DVB-T2 7.71 of 8 MHz, ISDB-T 5.57 of 6 MHz. Other widths are in
// proportion, as these systems scale their clock.
double noise_bandwidth_hz(BroadcastStandard standard, double channel_bandwidth_mhz);

}  // namespace mastwise::gear
