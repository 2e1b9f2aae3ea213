#pragma once

#include "app/shared/names.hpp"
#include "app/shared/settings.hpp"
#include "app/shared/survey.hpp"
#include "core/plan/clear_sectors.hpp"
#include "core/reception/obstacle_ring.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

// Before parking: which antenna is enough, and which sectors to keep clear.
namespace mastwise {

// The question to the worker: the same survey with each gear of the rig.
struct GearsQuestion {
  StationsQuestion here;  // position, surroundings, what is pinned; its gear does not count
  std::vector<GearChoice> gears = {};
  // What the logbook teaches about each gear, by band.
  std::vector<std::array<reception::LearnedBias, 3>> learned = {};
  bool operator==(const GearsQuestion&) const = default;
};

// A network with one gear, or a station whose networks are unknown.
struct GearOffer {
  std::string call_sign = {};                 // of the best station; empty if none is known
  std::optional<double> chance_percent = {};  // empty if unknown
  bool operator==(const GearOffer&) const = default;
};

// A wanted station in a sector.
struct SectorStation {
  std::string title = {};    // call sign and virtual channel
  std::string carries = {};  // its networks, else its city
  Bearing<True> bearing = {};
  std::optional<double> chance_percent = {};
  bool operator==(const SectorStation&) const = default;
};

struct KeptSector {
  HeadingArc arc = {};
  std::vector<SectorStation> stations = {};  // clockwise
  // What is lower does no harm at kNearObstacle_m; below 0: the ground itself is too near.
  double harmless_m = 0.0;
  bool operator==(const KeptSector&) const = default;
};

// One gear at this stop.
struct GearRow {
  std::string name = {};
  double height_m = 0.0;
  std::size_t networks = 0, unnamed = 0;  // at least likely
  std::vector<GearOffer> offers = {};     // in the order of GearsAnswer::networks
  std::vector<std::string> only = {};     // titles of the stations that no other gear brings
  std::vector<KeptSector> sectors = {};   // clockwise
  bool operator==(const GearRow&) const = default;
};

struct GearsAnswer {
  GearsQuestion question;
  std::vector<std::string> networks = {};  // that any gear brings at least likely
  std::size_t unnamed = 0;                 // such stations whose networks are unknown
  std::vector<GearRow> rows = {};          // in the order of the question's gears
  std::optional<std::size_t> enough = {};  // the lowest gear that brings all that any brings
  std::string trouble = {};                // why the survey failed
  bool operator==(const GearsAnswer&) const = default;
};

// Where rigs are expected on the next sites.
enum class Neighbors { both, right, left, none };
template <>
inline constexpr std::array kStoredNames<Neighbors> = names({"both", "right", "left", "none"});

// What a touch paints on a side of the rig.
struct Brush {
  reception::SideKind kind = reception::SideKind::trees;
  bool far = false, high = true;
  reception::Side side() const { return reception::usual_side(kind, far, high); }
  bool operator==(const Brush&) const = default;
};

// How a wanted station's way stands against what is around the rig.
enum class Sight { clear, blocked, unseen };

// A station that decides how to park.
struct WantedSight {
  std::string title = {};                  // call sign and virtual channel
  std::vector<std::string> networks = {};  // that it stands for; empty if unknown
  Bearing<True> bearing = {};
  HeadingArc arc = {};   // to be kept clear
  double side_db = 0.0;  // what the obstacle on its side costs
  Sight sight = Sight::unseen;
  std::size_t counts() const { return std::max<std::size_t>(1, networks.size()); }
  bool operator==(const WantedSight&) const = default;
};

// The answer to which way to park, with the antenna in use. Networks count, and stations whose
// networks are unknown.
struct ParkVerdict {
  std::size_t wanted = 0, clear = 0, unseen = 0;
  std::optional<RigHeading> better = {};  // a nose with fewer blocked ones
  std::size_t better_blocked = 0;         // with that nose
  std::size_t blocked() const { return wanted - clear - unseen; }
  bool operator==(const ParkVerdict&) const = default;
};

struct ParkingState {
  Neighbors neighbors = Neighbors::both;
  std::optional<GearsAnswer> answer = {};
  Brush brush = {};
  std::vector<std::size_t> stroke = {};  // the sides last painted
  bool wiping = false;
  std::vector<WantedSight> wanted = {};  // from the last whole answer about the stations here

  // While Here is open:
  ParkVerdict verdict = {};

  // While the sheet is open:
  std::optional<std::size_t> row = {};   // of the answer: the gear in use
  std::vector<HeadingArc> free = {};     // between the sectors, the widest first
  std::vector<HeadingArc> noses = {};    // that keep the neighbors out of them, the widest first
  std::optional<RigHeading> drawn = {};  // the nose, else the middle of the widest range
  bool right_blocks = false, left_blocks = false;  // that neighbor of the drawn rig, a sector
  bool operator==(const ParkingState&) const = default;
};

inline bool on_right(Neighbors neighbors) {
  return neighbors == Neighbors::both || neighbors == Neighbors::right;
}
inline bool on_left(Neighbors neighbors) {
  return neighbors == Neighbors::both || neighbors == Neighbors::left;
}

}  // namespace mastwise
