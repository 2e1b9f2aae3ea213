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

// The networks along the route there.
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

using AheadActions = ActionList<act::DropPlace, act::DropAllPlaces, act::PlacesBack,
                                act::SwitchAlong, act::RouteSurveyed>;

}  // namespace mastwise
