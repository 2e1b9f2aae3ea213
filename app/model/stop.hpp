#pragma once

#include "app/model/choices.hpp"
#include "core/angles/bearing.hpp"
#include "core/broadcast/station.hpp"
#include "core/geo/position.hpp"
#include "core/reception/surroundings.hpp"

#include <optional>
#include <variant>

namespace mastwise {

// A heading as a person reads it, with the north it was read from.
using ReadHeading = std::variant<Bearing<True>, Bearing<Magnetic>>;

// Which way the rig's nose points, and how that is known.
struct Nose {
  enum class Origin { ByHand, LastCourse, BackedIn };
  ReadHeading heading;
  Origin origin = Origin::ByHand;
  bool operator==(const Nose&) const = default;
};

// Where the rig stands, as the person has set it. A touch that changes it can be taken back.
struct Stop {
  bool practice = false;  // the invented stop with its invented stations
  PositionSource source = PositionSource::Receiver;
  std::optional<Position> by_hand = {};
  std::optional<Nose> nose = {};
  std::optional<Station> target = {};
  reception::Surroundings surroundings = reception::Surroundings::open;
  bool operator==(const Stop&) const = default;
};

}  // namespace mastwise
