#pragma once

#include "app/model/choices.hpp"
#include "app/model/plan.hpp"
#include "app/model/sweep.hpp"
#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/headings/heading_error.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"
#include "core/stations/station.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace mastwise {

// What a position is unsure by, one sigma in m: typed by hand; and of a rig that is only said to be
// in a town, or of the dot that a map has for it [own choices, no source].
inline constexpr double kTypedPosition_m = 50.0;
inline constexpr double kSomewhereInTown_m = 2000.0, kDotOfTown_m = 1000.0;

// A heading as a person reads it, with the north it was read from.
using ReadHeading = std::variant<Bearing<True>, Bearing<Magnetic>>;

// Which way the rig's nose points, and how that is known.
struct Nose {
  enum class Origin { ByHand, LastCourse, BackedIn, Sensor, Sun, TwoPoints };
  ReadHeading heading;
  Origin origin = Origin::ByHand;
  double sigma_deg = kBaseplateCompass_deg;  // one standard deviation
  std::optional<Position> taken_at = {};     // it holds there only; nothing: wherever it was typed
  std::optional<RigHeadingCaution> caution = {};
  bool operator==(const Nose&) const = default;
};

// A sweep that was kept: where the dial said that the station is.
struct PeakedStation {
  StationKey key = {};
  SweepBy by = SweepBy::Compass;
  Position position;  // of its transmitter
  Position taken_at;  // where the rig stood: it says nothing of the compass elsewhere
  double peak_deg = 0.0;
  double sigma_deg = 0.0;
  bool operator==(const PeakedStation&) const = default;
};

// Where the rig stands, as the person has set it. A touch that changes it can be taken back.
struct Stop {
  bool practice = false;  // the invented stop with its invented stations
  PositionSource source = PositionSource::Receiver;
  std::optional<Position> by_hand = {};
  double by_hand_error_m = kTypedPosition_m;  // one standard deviation
  std::string by_name = {};                   // of the place whose middle it is; empty: of none
  std::optional<Nose> nose = {};
  std::optional<Position> tail_mark = {};  // the first of two points along the flank
  std::optional<Station> target = {};
  std::vector<PeakedStation> strong_stations = {};
  std::vector<StationKey> pinned = {};  // must be in the plan
  reception::Surroundings surroundings = reception::Surroundings::open;
  bool operator==(const Stop&) const = default;
};

// Within 200 m: what was seen at one holds at the other.
bool same_stop(const Position& a, const Position& b);

bool is_pinned(const Stop& stop, const StationKey& key);

}  // namespace mastwise
