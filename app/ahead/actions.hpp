#pragma once

#include "app/ahead/state.hpp"
#include "app/shared/action.hpp"

#include <string_view>
#include <vector>

namespace mastwise::act {

struct DropPlace {
  static constexpr std::string_view kName = "DropPlace";
  static constexpr auto kFields = fields("index");
  std::size_t index;  // of the possible stops
};

struct DropAllPlaces {
  static constexpr std::string_view kName = "DropAllPlaces";
};

// Undoes a removal.
struct PlacesBack {
  static constexpr std::string_view kName = "PlacesBack";
  static constexpr auto kFields = fields("places");
  std::vector<Position> places;
};

// The place that the acts are about.
struct ChoosePlace {
  static constexpr std::string_view kName = "ChoosePlace";
  static constexpr auto kFields = fields("index");
  std::size_t index;  // of the possible stops
};

// The rig will stop there: its position becomes the one in use.
struct SetNextStop {
  static constexpr std::string_view kName = "SetNextStop";
  static constexpr auto kFields = fields("index");
  std::size_t index;  // of the possible stops
};

struct CompareBy {
  static constexpr std::string_view kName = "CompareBy";
  static constexpr auto kFields = fields("wants");
  AheadWants wants;
};

struct NextAheadFloor {
  static constexpr std::string_view kName = "NextAheadFloor";
};

// Other columns, where not all fit.
struct ShowPlacesFrom {
  static constexpr std::string_view kName = "ShowPlacesFrom";
  static constexpr auto kFields = fields("column");
  std::size_t column;
};

// Recordings have it from when the way was shown on request; it does nothing.
struct SwitchAlong {
  static constexpr std::string_view kName = "SwitchAlong";
};

struct RouteSurveyed {
  static constexpr std::string_view kName = "RouteSurveyed";
  static constexpr auto kFields = fields("sheet");
  RouteSheet sheet;
};

}  // namespace mastwise::act

namespace mastwise {

using AheadActions =
    ActionList<act::DropPlace, act::DropAllPlaces, act::PlacesBack, act::ChoosePlace,
               act::SetNextStop, act::CompareBy, act::NextAheadFloor, act::ShowPlacesFrom,
               act::SwitchAlong, act::RouteSurveyed>;

}  // namespace mastwise
