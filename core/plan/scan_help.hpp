#pragma once

#include "core/angles/bearing.hpp"
#include "core/stations/station.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mastwise {

// A station expected at a heading.
struct ScanCandidate {
  Station station;
  std::optional<double> chance_percent = {};  // at this heading; std::nullopt if unknown
  Bearing<True> bearing = {};                 // from the stop
  double distance_m = 0.0;
};

// What the receiver should show once it finds a channel.
struct ExpectedStation {
  std::size_t candidate = 0;  // index in the given list
  std::string call_sign = {};
  std::vector<std::string> virtual_channels = {};  // as in the catalog; may be empty
  bool operator==(const ExpectedStation&) const = default;
};

// One RF channel to enter by hand.
struct ChannelToEnter {
  RfChannel rf_channel = {};
  std::optional<double> center_mhz = {};       // std::nullopt if the channel plan lacks the channel
  std::optional<double> chance_percent = {};   // of the best station on it
  std::vector<ExpectedStation> expected = {};  // best first; several share the channel
  bool operator==(const ChannelToEnter&) const = default;
};

// One transmitter that shows a virtual channel.
struct Twin {
  std::size_t candidate;  // index in the given list
  std::string call_sign;
  RfChannel rf_channel;
  double distance_m;
  Bearing<True> bearing;
  std::optional<double> chance_percent;
  bool operator==(const Twin&) const = default;
};

// A virtual channel that two or more transmitters show.
struct Twins {
  std::string virtual_channel;
  std::vector<Twin> by_scan;  // in the order of a scan from low to high
  std::size_t best;           // index in by_scan of the one with the best chance
  // A receiver that scans from low to high finds another one before the best [common practice, no
  // source: it may store that one first and show it, although far away].
  bool another_comes_first() const { return best != 0; }
  bool operator==(const Twins&) const = default;
};

struct ScanPlan {
  // Best chance first, since each entry takes many touches in the receiver's menu. The first ones
  // bring the most programs, and the first that locks shows that antenna, amplifier and cable work.
  // Equal chances are sorted by frequency, unknown ones last.
  std::vector<ChannelToEnter> channels;
  std::vector<Twins> twins;  // by virtual channel
};

// What to enter, what to expect and which channels to distinguish.
ScanPlan plan_scan(std::span<const ScanCandidate> candidates);

// What was seen of a candidate.
enum class ScanTick : std::uint8_t { not_tried, found, not_found };

enum class ScanState : std::uint8_t {
  not_finished,  // not all are ticked
  all_found,
  nothing_found,
  weak_missing,    // every missing one has a smaller chance than every one found
  strong_missing,  // a missing one had a better chance than one found
};

struct ScanAdvice {
  ScanState state;
  std::vector<std::size_t> missing;  // places in the given list, the best chance first
};

// What the ticks say, and what to do next. `ticks` beyond the candidates are not looked at; a
// candidate without one is not tried. Without candidates the scan is not finished.
ScanAdvice advise(std::span<const ScanCandidate> candidates, std::span<const ScanTick> ticks);

enum class ScanChoice : std::uint8_t {
  full,            // at a new stop
  by_hand,         // the list is of this stop, and the receiver accepts channels by hand
  add_heading,     // an "add" scan: same stop, another heading
  add_after_peak,  // an "add" scan: same stop, same heading
};

// The origin of the receiver's current list.
struct ReceiverList {
  bool made_at_this_stop = false;
  bool made_on_this_heading = false;
  bool takes_channels_by_hand = false;  // the receiver accepts RF channels by hand
};

// The right scan now, always after aiming. A full scan takes 3 to 15 minutes and often erases the
// list; an "add" scan keeps it [common practice, no source].
ScanChoice which_scan(const ReceiverList& list);

}  // namespace mastwise
