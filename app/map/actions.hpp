#pragma once

#include "app/map/state.hpp"
#include "app/shared/action.hpp"

#include <string_view>

namespace mastwise::act {

struct MoveMap {
  static constexpr std::string_view kName = "MoveMap";
  static constexpr auto kFields = fields("move");
  MapMove move;
};

struct TouchMap {
  static constexpr std::string_view kName = "TouchMap";
  static constexpr auto kFields = fields("at");
  MapOffset at;
};

// A long press: what is there?
struct HoldMap {
  static constexpr std::string_view kName = "HoldMap";
  static constexpr auto kFields = fields("at");
  MapOffset at;
};

// The held place becomes the stop, or one of the places ahead.
struct UseSpot {
  static constexpr std::string_view kName = "UseSpot";
};
struct CompareSpot {
  static constexpr std::string_view kName = "CompareSpot";
};

struct ChooseMapUp {
  static constexpr std::string_view kName = "ChooseMapUp";
  static constexpr auto kFields = fields("up");
  MapUp up;
};

// The next of the two, before both were shown.
struct NextMapUp {
  static constexpr std::string_view kName = "NextMapUp";
};

// The stop in the middle again.
struct CenterMap {
  static constexpr std::string_view kName = "CenterMap";
};

// The chance around the stop.
struct SwitchArea {
  static constexpr std::string_view kName = "SwitchArea";
};

struct NextAreaRadius {
  static constexpr std::string_view kName = "NextAreaRadius";
};

struct MapDrawn {
  static constexpr std::string_view kName = "MapDrawn";
  MapSheet sheet;
};

struct AreaScanned {
  static constexpr std::string_view kName = "AreaScanned";
  static constexpr auto kFields = fields("sheet");
  AreaSheet sheet;
};

}  // namespace mastwise::act

namespace mastwise {

using MapActions =
    ActionList<act::MoveMap, act::TouchMap, act::HoldMap, act::UseSpot, act::CompareSpot,
               act::ChooseMapUp, act::NextMapUp, act::CenterMap, act::SwitchArea,
               act::NextAreaRadius, act::MapDrawn, act::AreaScanned>;

}  // namespace mastwise
