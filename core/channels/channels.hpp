#pragma once

#include "core/result.hpp"

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise {

// A published numbering of television channels.
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

// A channel's number with its letter, as in "9A"; '\0' where it has none, as nearly all.
struct RfChannel {
  int number = 0;
  char letter = '\0';
  auto operator<=>(const RfChannel&) const = default;
};

// The part of the spectrum that a channel takes.
struct ChannelSlot {
  double low_mhz;
  double high_mhz;
  double center_mhz;  // of the transmitted signal; not always the middle of the slot
  Band band;
  double bandwidth_mhz() const { return high_mhz - low_mhz; }
  bool operator==(const ChannelSlot&) const = default;
};

// The slot of a channel; nothing where the raster has no such channel.
// Source: 47 CFR 73.603 for ATSC (2 to 36); the others' published band plans.
std::optional<ChannelSlot> channel_slot(Raster raster, RfChannel channel);

// The channel whose center lies within 0.5 MHz of the frequency (regulators' tables carry offsets);
// nothing where there is none.
std::optional<RfChannel> channel_at(Raster raster, double center_mhz);

// "23", "9A"; blanks around it are allowed. Refuses anything else, saying why.
Result<RfChannel> parse_rf_channel(std::string_view text);
std::string to_text(RfChannel channel);

// "ATSC", "Europe", "Australia", "Japan", "Brazil"; parsing takes no notice of case.
std::string_view to_text(Raster raster);
Result<Raster> parse_raster(std::string_view text);

// "low VHF", "high VHF", "UHF".
std::string_view to_text(Band band);

}  // namespace mastwise
