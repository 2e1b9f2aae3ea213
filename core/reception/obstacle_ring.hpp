#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

// What stands around the rig, as a person marks it: eight sides of 45 degrees, and what it costs a
// signal from there.
namespace mastwise::reception {

enum class SideKind : std::uint8_t { unmarked, open, trees, rig, hill };
inline constexpr std::size_t kSideKinds = 5;

// "not marked", "open", "trees", "rig", "hill"; parsing ignores case and knows the last four.
std::string_view to_text(SideKind kind);
Result<SideKind> parse_side_kind(std::string_view text);

// Within these a side's figures make sense, m.
inline constexpr double kNearestSide_m = 1.0, kFarthestSide_m = 3'000.0;
inline constexpr double kHighestSide_m = 1'000.0;

// What is seen on one side.
struct Side {
  SideKind kind = SideKind::unmarked;
  double distance_m = 0.0;  // from the antenna to its near face
  double height_m = 0.0;    // of its top above the ground at the rig
  bool blocks() const {
    return kind == SideKind::trees || kind == SideKind::rig || kind == SideKind::hill;
  }
  bool operator==(const Side&) const = default;
};

// A side of this kind with plain figures for a person who measures nothing. Trees 15 or 45 m away
// are 8 or 15 m high, rigs 8 or 16 m away 3 or 4 m, hills 150 or 500 m away 20 or 60 m [our
// choices; 15 m for trees as in Recommendation ITU-R P.2108-1 table 3, and 4 m is about the legal
// limit of rigs on American roads, 13 ft 6 in]. Open and unmarked sides have no figures.
Side usual_side(SideKind kind, bool far, bool high);

inline constexpr std::size_t kSides = 8;
inline constexpr double kSide_deg = 360.0 / kSides;

struct ObstacleRing {
  Bearing<True> first = {};  // the middle of sides[0]; the others follow clockwise
  std::array<Side, kSides> sides = {};

  Bearing<True> middle_of(std::size_t side) const;
  // The side in this direction; a direction between two belongs to the clockwise one.
  std::size_t side_toward(Bearing<True> bearing) const;
  bool blank() const;  // no side is marked
  bool clear() const;  // no side has an obstacle
  bool operator==(const ObstacleRing&) const = default;
};

// The ground from the antenna toward a station, to tell how steeply its signal arrives.
class GroundAhead {
 public:
  // Unknown ground: the signal arrives level.
  GroundAhead() = default;
  // `heights_m` above mean sea level from the station's foot to the stop's, `spacing_m` apart, both
  // antennas above the same. What it views must outlive it.
  GroundAhead(std::span<const double> heights_m, double spacing_m, double station_antenna_amsl_m,
              double stop_antenna_amsl_m);

  // Rise per meter of the ray that comes over the station's antenna and all ground farther than
  // `from_m`, on an earth of 4/3 radius.
  double slope_beyond(double from_m) const;
  // The greatest loss of ground nearer than `to_m` as a knife edge below a ray of that rise, dB.
  double edge_loss_db(double to_m, double slope, double frequency_mhz) const;

 private:
  double above_antenna_m(std::size_t point, double distance_m) const;

  std::span<const double> heights_m_ = {};
  double spacing_m_ = 0.0, station_amsl_m_ = 0.0, stop_amsl_m_ = 0.0;
};

struct RingLoss {
  double loss_db = 0.0;  // at least 0
  std::size_t side = 0;  // whose obstacle it is
};

// What the ring costs a signal from `bearing`, in dB.
//
// A rig or a hill is a screen of finite width: its top and its two ends are knife edges whose
// average powers add [Recommendation ITU-R P.526 section 5.1, from memory; edges by section 4.1,
// (26) with the station far away, and (31)]. It ends where its side ends, and goes on where the
// next side has an obstacle too. So a station beside an obstacle may lose a part. Trees let the
// share of kTreesDepth_m of them through [P.833 section 2.1, bare or in leaf], and only the rest
// bends round them [Babinet's principle, with powers instead of amplitudes]. Of a hill counts what
// the known ground within three times its distance does not cost already, since the models see
// that. If several obstacles matter, the costliest counts.
//
// `antenna_m`: height of the antenna above the ground at the rig. Frequency within [30, 3000] MHz.
// A higher obstacle, or one more of them, never lowers the loss.
RingLoss ring_loss(const ObstacleRing& ring, Bearing<True> bearing, const GroundAhead& ground,
                   double antenna_m, double frequency_mhz, bool in_leaf);

// Depth of a row of trees at the edge of a site [our choice, no source].
inline constexpr double kTreesDepth_m = 30.0;

// An obstacle from a command line: "NE:trees", "NE:trees:20m:12m", "112.5:hill:300m:40m". The
// direction is a true bearing in degrees or one of N, NE, E, SE, S, SW, W, NW; it is given to the
// nearest side of a ring whose first side is north. Without distance and height the usual near and
// high ones.
struct NamedSide {
  std::size_t side = 0;
  Side what = {};
};
Result<NamedSide> parse_side(std::string_view text);

// Why a side's figures are impossible.
std::optional<Error> fault(const Side& side);

}  // namespace mastwise::reception
