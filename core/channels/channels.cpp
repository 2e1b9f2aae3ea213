#include "core/channels/channels.hpp"

#include "core/text/words.hpp"

#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

// A run of neighboring channels of equal width.
struct Run {
  Raster raster;
  int first;
  int last;
  double low_mhz;  // lower edge of the first channel
  double width_mhz;
  double offset_mhz;  // of the signal's center from the middle of the slot
  Band band;
};

constexpr double kIsdbOffsetMhz = 1.0 / 7.0;

constexpr std::array kRuns{
    Run{Raster::atsc, 2, 4, 54.0, 6.0, 0.0, Band::low_vhf},
    Run{Raster::atsc, 5, 6, 76.0, 6.0, 0.0, Band::low_vhf},
    Run{Raster::atsc, 7, 13, 174.0, 6.0, 0.0, Band::high_vhf},
    Run{Raster::atsc, 14, 36, 470.0, 6.0, 0.0, Band::uhf},
    Run{Raster::europe, 5, 12, 174.0, 7.0, 0.0, Band::high_vhf},
    Run{Raster::europe, 21, 48, 470.0, 8.0, 0.0, Band::uhf},
    Run{Raster::australia, 6, 9, 174.0, 7.0, 0.0, Band::high_vhf},
    Run{Raster::australia, 10, 12, 209.0, 7.0, 0.0, Band::high_vhf},
    Run{Raster::australia, 28, 51, 526.0, 7.0, 0.0, Band::uhf},
    Run{Raster::japan, 13, 52, 470.0, 6.0, kIsdbOffsetMhz, Band::uhf},
    Run{Raster::brazil, 7, 13, 174.0, 6.0, kIsdbOffsetMhz, Band::high_vhf},
    Run{Raster::brazil, 14, 51, 470.0, 6.0, kIsdbOffsetMhz, Band::uhf},
};

// Added between 9 and 10, which kept their numbers.
constexpr RfChannel kAustralia9A{9, 'A'};
constexpr ChannelSlot kAustralia9ASlot{202.0, 209.0, 205.5, Band::high_vhf};

constexpr std::array kRasters{Raster::atsc, Raster::europe, Raster::australia, Raster::japan,
                              Raster::brazil};

ChannelSlot slot_in(const Run& run, int number) {
  const double low_mhz = run.low_mhz + run.width_mhz * (number - run.first);
  return {low_mhz, low_mhz + run.width_mhz, low_mhz + run.width_mhz / 2.0 + run.offset_mhz,
          run.band};
}

}  // namespace

std::optional<ChannelSlot> channel_slot(Raster raster, RfChannel channel) {
  if (raster == Raster::australia && channel == kAustralia9A) return kAustralia9ASlot;
  if (channel.letter != '\0') return std::nullopt;
  for (const Run& run : kRuns) {
    if (run.raster == raster && channel.number >= run.first && channel.number <= run.last) {
      return slot_in(run, channel.number);
    }
  }
  return std::nullopt;
}

std::optional<RfChannel> channel_at(Raster raster, double center_mhz) {
  constexpr double kOffsetMhz = 0.5;
  if (raster == Raster::australia &&
      std::fabs(center_mhz - kAustralia9ASlot.center_mhz) <= kOffsetMhz) {
    return kAustralia9A;
  }
  for (const Run& run : kRuns) {
    if (run.raster != raster) continue;
    for (int number = run.first; number <= run.last; ++number) {
      if (std::fabs(center_mhz - slot_in(run, number).center_mhz) <= kOffsetMhz) {
        return RfChannel{number};
      }
    }
  }
  return std::nullopt;
}

Result<RfChannel> parse_rf_channel(std::string_view text) {
  text = words::trimmed(text);
  RfChannel channel;
  const char* end = text.data() + text.size();
  const auto [rest, fault] = std::from_chars(text.data(), end, channel.number);
  const bool with_letter = end - rest == 1 && words::is_letter(*rest);
  if (fault != std::errc() || (rest != end && !with_letter) || channel.number < 1) {
    return Error{.what = fmt::format("\"{}\" is not an RF channel", text),
                 .remedy = "give the channel number, and its letter if any, as in 23 or 9A"};
  }
  if (with_letter) channel.letter = words::upper(*rest);
  return channel;
}

std::string to_text(RfChannel channel) {
  std::string text = std::to_string(channel.number);
  if (channel.letter != '\0') text += channel.letter;
  return text;
}

std::string_view to_text(Raster raster) {
  switch (raster) {
    case Raster::atsc:
      return "ATSC";
    case Raster::europe:
      return "Europe";
    case Raster::australia:
      return "Australia";
    case Raster::japan:
      return "Japan";
    case Raster::brazil:
      return "Brazil";
  }
  return {};
}

Result<Raster> parse_raster(std::string_view text) {
  return words::parse_choice(text, kRasters, "a channel plan");
}

std::string_view to_text(Band band) {
  switch (band) {
    case Band::low_vhf:
      return "low VHF";
    case Band::high_vhf:
      return "high VHF";
    case Band::uhf:
      return "UHF";
  }
  return {};
}

}  // namespace mastwise
