#pragma once

#include "app/model/choices.hpp"
#include "app/model/map.hpp"
#include "app/model/route.hpp"
#include "app/model/stations.hpp"
#include "app/shared/action.hpp"

#include <string>
#include <string_view>

// What looks for stations and headings: list, map, plan, places ahead.
namespace mastwise::act {

struct ClearSearch {
  static constexpr std::string_view kName = "ClearSearch";
};

struct SelectStation {
  static constexpr std::string_view kName = "SelectStation";
  StationKey key;
};

// Pins a station into every plan, or unpins it.
struct PinStation {
  static constexpr std::string_view kName = "PinStation";
  StationKey key;
};

struct ChoosePlan {
  static constexpr std::string_view kName = "ChoosePlan";
  PlanFor plan_for;
};

// The least chance that a heading must bring.
struct NextPlanFloor {
  static constexpr std::string_view kName = "NextPlanFloor";
};

// Whether the receiver accepts channels by hand.
struct SwitchChannelEntry {
  static constexpr std::string_view kName = "SwitchChannelEntry";
};

struct ScanStep {
  static constexpr std::string_view kName = "ScanStep";
  std::size_t step;  // of the plan: show its channels
};

// Not tried, found, not found.
struct TickStation {
  static constexpr std::string_view kName = "TickStation";
  StationKey key;
};

// List only stations above the next chance.
struct NextChanceFloor {
  static constexpr std::string_view kName = "NextChanceFloor";
};

// The best source of each network, or all.
struct SwitchGrouping {
  static constexpr std::string_view kName = "SwitchGrouping";
};

struct StationsFound {
  static constexpr std::string_view kName = "StationsFound";
  StationsAnswer answer;
};

// The station map and the best spots.
// Between list and map.
struct SwitchMap {
  static constexpr std::string_view kName = "SwitchMap";
};

struct MoveMap {
  static constexpr std::string_view kName = "MoveMap";
  MapMove move;
};

struct TouchMap {
  static constexpr std::string_view kName = "TouchMap";
  MapOffset at;
};

// North or the rig's nose.
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
  AreaSheet sheet;
};

struct DropPlace {
  static constexpr std::string_view kName = "DropPlace";
  std::size_t index;  // of the possible stops
};

struct DropAllPlaces {
  static constexpr std::string_view kName = "DropAllPlaces";
};

// The networks along the route there.
struct SwitchAlong {
  static constexpr std::string_view kName = "SwitchAlong";
};

struct RouteSurveyed {
  static constexpr std::string_view kName = "RouteSurveyed";
  RouteSheet sheet;
};

}  // namespace mastwise::act

namespace mastwise {

using FindActions =
    ActionList<act::ClearSearch, act::SelectStation, act::PinStation, act::ChoosePlan,
               act::NextPlanFloor, act::SwitchChannelEntry, act::ScanStep, act::TickStation,
               act::NextChanceFloor, act::SwitchGrouping, act::StationsFound, act::SwitchMap,
               act::MoveMap, act::TouchMap, act::NextMapUp, act::CenterMap, act::SwitchArea,
               act::NextAreaRadius, act::MapDrawn, act::AreaScanned, act::DropPlace,
               act::DropAllPlaces, act::SwitchAlong, act::RouteSurveyed>;

}  // namespace mastwise
