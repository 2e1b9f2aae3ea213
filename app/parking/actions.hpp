#pragma once

#include "app/parking/state.hpp"
#include "app/shared/action.hpp"
#include "core/reception/obstacle_ring.hpp"

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

struct ChooseNeighbors {
  static constexpr std::string_view kName = "ChooseNeighbors";
  static constexpr auto kFields = fields("neighbors");
  Neighbors neighbors;
};

// Of recordings before that were segments: both sides, right, left, none, one after another.
struct NextNeighbors {
  static constexpr std::string_view kName = "NextNeighbors";
};

struct GearsCompared {
  static constexpr std::string_view kName = "GearsCompared";
  static constexpr auto kFields = fields("answer");
  GearsAnswer answer;
};

// What the next touch paints on a side of the rig.
struct ChooseBrush {
  static constexpr std::string_view kName = "ChooseBrush";
  static constexpr auto kFields = fields("kind");
  reception::SideKind kind;
};

// How far and how high it is; the sides of the last stroke follow.
struct ShapeBrush {
  static constexpr std::string_view kName = "ShapeBrush";
  static constexpr auto kFields = fields("far", "high");
  bool far, high;
};

// Paints a side with the brush. A tap on a side that is painted so clears it; a wipe goes on over
// more sides as one change for Undo.
struct PaintSide {
  static constexpr std::string_view kName = "PaintSide";
  static constexpr auto kFields = fields("side", "wipe");
  std::size_t side;  // of the ring, below reception::kSides
  bool wipe;
};

// The finger of a wipe is up.
struct EndWipe {
  static constexpr std::string_view kName = "EndWipe";
};

}  // namespace mastwise::act

namespace mastwise {

using ParkingActions =
    ActionList<act::UseGear, act::ToggleGear, act::ChooseNeighbors, act::NextNeighbors,
               act::GearsCompared, act::ChooseBrush, act::ShapeBrush, act::PaintSide, act::EndWipe>;

}  // namespace mastwise
