#pragma once

#include "app/shared/action.hpp"
#include "app/shared/settings.hpp"
#include "app/stations/state.hpp"

#include <string>
#include <string_view>

namespace mastwise::act {

struct ClearSearch {
  static constexpr std::string_view kName = "ClearSearch";
};

struct ChooseList {
  static constexpr std::string_view kName = "ChooseList";
  static constexpr auto kFields = fields("list_of");
  ListOf list_of;
};

// Between all and the likely stations, in recordings of before a list was chosen by name.
struct NextChanceFloor {
  static constexpr std::string_view kName = "NextChanceFloor";
};

// Between all and the networks, likewise.
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

// Pins another station in the place of one that is gone.
struct PinInstead {
  static constexpr std::string_view kName = "PinInstead";
  static constexpr auto kFields = fields("lost", "instead");
  StationKey lost;
  StationKey instead;
};

}  // namespace mastwise::act

namespace mastwise {

using StationsActions =
    ActionList<act::ClearSearch, act::ChooseList, act::NextChanceFloor, act::SwitchGrouping,
               act::TickNetwork, act::PinNetwork, act::PinInstead>;

}  // namespace mastwise
