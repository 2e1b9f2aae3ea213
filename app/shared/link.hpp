#pragma once

#include "app/shared/names.hpp"

#include <string>

namespace mastwise {

// The connection to the receiver.
struct Link {
  enum class State { Searching, Open, Lost, Ended } state = State::Searching;
  std::string name = {};  // the device's name; if lost, the reason
  bool recorded = false;  // a log is played, whose dates are its own
  bool operator==(const Link&) const = default;
};
template <>
inline constexpr std::array kStoredNames<Link::State> = names({"searching", "open", "lost",
                                                               "ended"});

}  // namespace mastwise
