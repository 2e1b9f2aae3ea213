#pragma once

#include "core/angles/bearing.hpp"
#include "core/gear/television.hpp"
#include "core/reception/chance.hpp"
#include "core/reception/obstacle.hpp"
#include "core/reception/reason.hpp"
#include "core/stations/station.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace mastwise::reception {

// How a path was computed.
enum class PathMode : std::uint8_t {
  none,            // not computed: a fact is missing, or the stop is at the transmitter
  point_to_point,  // both models on the same profile
  partial,         // the same, with guesses where the profile has no terrain
  area,            // the terrain model's area mode, as the ground at an end is unknown
};
// "not computed", "point to point", "partial", "area".
std::string_view to_text(PathMode mode);

// The computed figures of one station at one stop. Fields are medians over time and locations at
// the receiving antenna, after surroundings and leaves, from the station's power.
struct Outlook {
  double distance_m = 0.0;
  Bearing<True> bearing;       // from the stop to the station
  double frequency_mhz = 0.0;  // center of the channel
  Band band = Band::uhf;
  PathMode mode = PathMode::none;
  double terrain_coverage = 0.0;  // share of the path with terrain, [0, 1]
  // Above ground; in area mode above the average ground.
  std::optional<double> transmitter_height_m = {};
  std::optional<double> field_p1812_dbuvm = {};  // not in area mode
  std::optional<double> field_itm_dbuvm = {};
  std::optional<double> field_dbuvm = {};  // the mean of the two in dB, or the only one
  std::optional<double> spread_db = {};    // difference of the two; needs both
  std::optional<double> margin_db = {};    // median, antenna aimed, with interference
  // std::nullopt if a required fact is unknown, or if the TV cannot decode the station.
  std::optional<double> chance_percent = {};
  // The chance is never shown higher: too much of the ground, or of the signal's kind, is unknown.
  double chance_cap_percent = 100.0;
  Deviations deviations = {};
  Obstacles obstacles = {};
  double side_db = 0.0;        // what the marked obstacle on its side costs
  bool amplifier_off = false;  // strong signals overload the amplifier: computed without it
  gear::Decoding decoding = gear::Decoding::possible;  // by the TV
  bool operator==(const Outlook&) const = default;
};

// A station's outlook with the station and the reasons, worst first.
struct Prospect {
  Station station;
  Outlook outlook = {};
  std::vector<Reason> reasons = {};
};

}  // namespace mastwise::reception
