#pragma once

#include "core/result.hpp"

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise {

// A published channel plan for television.
enum class Raster : std::uint8_t {
  atsc,       // United States, Canada, Mexico: 6 MHz [47 CFR 73.603]
  europe,     // band III 7 MHz, UHF 8 MHz [GE06]
  australia,  // 7 MHz, with a channel 9A
  japan,      // 6 MHz, ISDB-T, centers 1/7 MHz above the middle
  brazil,     // 6 MHz, ISDB-Tb, centers 1/7 MHz above the middle
};

enum class Band : std::uint8_t {
  low_vhf,   // below 108 MHz
  high_vhf,  // 174 to 230 MHz
  uhf,       // above 470 MHz
};

// A channel number with an optional letter, as in "9A"; '\0' for the usual case of no letter.
struct RfChannel {
  int number = 0;
  char letter = '\0';
  auto operator<=>(const RfChannel&) const = default;
};

// The part of the spectrum that a channel occupies.
struct ChannelSlot {
  double low_mhz;
  double high_mhz;
  double center_mhz;  // of the transmitted signal; not always the middle of the slot
  Band band;
  double bandwidth_mhz() const { return high_mhz - low_mhz; }
  bool operator==(const ChannelSlot&) const = default;
};

// The slot of a channel; std::nullopt if the channel plan does not have the channel. Source: 47 CFR
// 73.603 for ATSC (2 to 36); the published band plans of the others.
std::optional<ChannelSlot> channel_slot(Raster raster, RfChannel channel);

// The channel whose center is within 0.5 MHz of the frequency (regulators' tables carry offsets);
// std::nullopt if none is.
std::optional<RfChannel> channel_at(Raster raster, double center_mhz);

// Parses "23" or "9A", with optional blanks around it. The error says why other text is refused.
Result<RfChannel> parse_rf_channel(std::string_view text);
std::string to_text(RfChannel channel);

// "ATSC", "Europe", "Australia", "Japan", "Brazil"; parsing ignores case.
std::string_view to_text(Raster raster);
Result<Raster> parse_raster(std::string_view text);

// "low VHF", "high VHF", "UHF".
std::string_view to_text(Band band);

}  // namespace mastwise
