#pragma once

#include "core/geo/notation.hpp"

#include <array>
#include <string>

namespace mastwise {

// The places of the program that the rail leads to.
enum class Place { Here, Stations, Aim };

enum class PositionSource { Receiver, ByHand };

// What the top of the dial shows.
enum class DialUp { TrueNorth, Nose, Facing };

enum class KeypadPurpose { Position, Nose, Search };

// The line to the receiver.
struct Link {
  enum class State { Searching, Open, Lost, Ended } state = State::Searching;
  std::string name = {};  // the device as a person knows it; when lost, why
  bool operator==(const Link&) const = default;
};

inline constexpr std::array kNotations{Notation::Decimal, Notation::DegreesMinutes,
                                       Notation::DegreesMinutesSeconds, Notation::UtmUps,
                                       Notation::Mgrs};

// Kept from session to session.
struct Settings {
  bool night = false;
  bool miles = true;
  bool left_handed = false;
  Notation notation = Notation::Decimal;
  bool operator==(const Settings&) const = default;
};

}  // namespace mastwise
