#pragma once

#include "app/shared/action.hpp"
#include "app/shared/settings.hpp"

#include <string>
#include <string_view>

namespace mastwise::act {

struct ClearSearch {
  static constexpr std::string_view kName = "ClearSearch";
};

// List only stations above the next chance.
struct NextChanceFloor {
  static constexpr std::string_view kName = "NextChanceFloor";
};

// The best source of each network, or all.
struct SwitchGrouping {
  static constexpr std::string_view kName = "SwitchGrouping";
};

// Ticks a network seen on the station, or unticks it.
struct TickNetwork {
  static constexpr std::string_view kName = "TickNetwork";
  static constexpr auto kFields = fields("ticked");
  TickedNetwork ticked;
};

// Pins a network for every stop, or unpins it.
struct PinNetwork {
  static constexpr std::string_view kName = "PinNetwork";
  static constexpr auto kFields = fields("network");
  std::string network;
};

}  // namespace mastwise::act

namespace mastwise {

using StationsActions = ActionList<act::ClearSearch, act::NextChanceFloor, act::SwitchGrouping,
                                   act::TickNetwork, act::PinNetwork>;

}  // namespace mastwise
