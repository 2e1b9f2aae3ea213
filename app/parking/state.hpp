#pragma once

#include "app/shared/names.hpp"
#include "app/shared/settings.hpp"
#include "app/shared/survey.hpp"
#include "core/plan/clear_sectors.hpp"

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

struct ParkingState {
  Neighbors neighbors = Neighbors::both;
  std::optional<GearsAnswer> answer = {};

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
