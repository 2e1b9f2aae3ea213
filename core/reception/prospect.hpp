#pragma once

#include "core/angles/bearing.hpp"
#include "core/reception/chance.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::reception {

enum class ReasonKind : std::uint8_t {
  // What costs decibels.
  obstacle,      // a ridge, or the curve of the earth
  rough_ground,  // the rest of what the ground costs beyond free space
  surroundings,  // at the stop
  leaves,
  polarization,
  same_channel,         // a station on the same channel
  next_channel,         // a station on a neighboring channel
  noise,                // man-made and galactic
  aim,                  // the error of the heading on this beam
  fading,               // evenings differ
  model_spread,         // the two models disagree
  transmitter_pattern,  // a directional station: what its pattern takes, known or assumed
  shortfall,            // how much is missing
  overload,             // strong signals are too much for the amplifier
  logbook,              // stations came in worse than computed before
  // What costs nothing that could be counted, 0 dB.
  clear_line,    // nothing in the way
  no_terrain,    // no, or not all, terrain for the path
  model_limit,   // a warning of a model
  unknown_fact,  // the power, the height, the standard is not known
};

// Why a prospect is as it is.
struct Reason {
  ReasonKind kind = ReasonKind::unknown_fact;
  double decibel = 0.0;   // what it costs; at least 0
  std::string text = {};  // plain words with a number and a place
  bool operator==(const Reason&) const = default;
};

// Ground that stands into the way from the station, or nearly.
struct Obstacle {
  double distance_m = 0.0;  // from the stop
  double ground_amsl_m = 0.0;
  // Over the straight ray between its neighbors, antennas or a worse obstacle, on an earth of 4/3
  // radius; negative: below it.
  double above_line_m = 0.0;
  double loss_db = 0.0;      // as a single knife edge [Recommendation ITU-R P.526 (31)]
  bool earth_curve = false;  // over the ray only because the earth is round
  bool operator==(const Obstacle&) const = default;
};

// The few obstacles that matter, worst first.
class Obstacles {
 public:
  static constexpr std::size_t kMost = 3;
  // Puts it in its place; at most kMost times.
  void add(const Obstacle& obstacle) {
    std::size_t place = count_++;
    for (; place > 0 && obstacles_[place - 1].loss_db < obstacle.loss_db; --place) {
      obstacles_[place] = obstacles_[place - 1];
    }
    obstacles_[place] = obstacle;
  }
  const Obstacle* begin() const { return obstacles_.data(); }
  const Obstacle* end() const { return obstacles_.data() + count_; }
  std::size_t size() const { return count_; }
  bool empty() const { return count_ == 0; }
  const Obstacle& operator[](std::size_t i) const { return obstacles_[i]; }
  bool operator==(const Obstacles&) const = default;

 private:
  std::array<Obstacle, kMost> obstacles_ = {};
  std::size_t count_ = 0;
};

// How a path was computed.
enum class PathMode : std::uint8_t {
  none,            // not at all: a fact is missing, or the stop is at the transmitter
  point_to_point,  // both models on the same profile
  area,            // the terrain model's area mode, since there is no terrain for all of the path
};
// "not computed", "point to point", "area".
std::string_view to_text(PathMode mode);

// What is known of one station at one stop, in numbers. Fields are medians over time and locations
// at the receiving antenna, surroundings and leaves taken off, from the station's own power.
struct Outlook {
  double distance_m = 0.0;
  Bearing<True> bearing;       // from the stop to the station
  double frequency_mhz = 0.0;  // center of the channel
  Band band = Band::uhf;
  PathMode mode = PathMode::none;
  double terrain_coverage = 0.0;                    // part of the path with terrain, [0, 1]
  std::optional<double> transmitter_height_m = {};  // above ground; in area mode above the country
  std::optional<double> field_p1812_dbuvm = {};     // point to point only
  std::optional<double> field_itm_dbuvm = {};
  std::optional<double> field_dbuvm = {};     // the mean of the two in dB, or the one there is
  std::optional<double> spread_db = {};       // how far the two are apart; needs both
  std::optional<double> margin_db = {};       // median, antenna aimed, interference counted
  std::optional<double> chance_percent = {};  // nothing where a fact that it needs is not known
  Deviations deviations = {};
  Obstacles obstacles = {};
  bool amplifier_off = false;  // strong signals overload the amplifier: computed without it
  bool operator==(const Outlook&) const = default;
};

// A station's outlook with the station and the reasons, worst first.
struct Prospect {
  Station station;
  Outlook outlook = {};
  std::vector<Reason> reasons = {};
};

}  // namespace mastwise::reception
