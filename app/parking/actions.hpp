#pragma once

#include "app/parking/state.hpp"
#include "app/shared/action.hpp"

#include <string>
#include <string_view>

namespace mastwise::act {

// Uses the rig's gear of this preset.
struct UseGear {
  static constexpr std::string_view kName = "UseGear";
  static constexpr auto kFields = fields("preset");
  std::string preset;
};

// The rig has this preset too, or no longer has it.
struct ToggleGear {
  static constexpr std::string_view kName = "ToggleGear";
  static constexpr auto kFields = fields("preset");
  std::string preset;
};

// Neighbors on both sides, on the right, on the left, none.
struct NextNeighbors {
  static constexpr std::string_view kName = "NextNeighbors";
};

struct GearsCompared {
  static constexpr std::string_view kName = "GearsCompared";
  static constexpr auto kFields = fields("answer");
  GearsAnswer answer;
};

}  // namespace mastwise::act

namespace mastwise {

using ParkingActions =
    ActionList<act::UseGear, act::ToggleGear, act::NextNeighbors, act::GearsCompared>;

}  // namespace mastwise
