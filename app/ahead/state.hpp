#pragma once

#include "app/shared/survey.hpp"
#include "core/geo/position.hpp"
#include "core/reception/route.hpp"

#include <optional>
#include <string>
#include <vector>

// Reception along the route to places ahead.
namespace mastwise {

struct RouteQuestion {
  StationsQuestion here;  // what a survey depends on
  std::vector<Position> points = {};
  std::vector<std::string> networks = {};
  double floor_percent = kUsualFloor_percent;
  double step_km = 0.0;  // between surveys; 0: chosen by the length
  bool operator==(const RouteQuestion&) const = default;
};

// One network along the way.
struct RouteRow {
  std::string network = {};
  std::vector<reception::RouteChance> chances = {};  // of its best station, in driving order
  std::vector<reception::Stretch> stretches = {};    // with at least the floor
  bool operator==(const RouteRow&) const = default;
};

struct RouteSheet {
  RouteQuestion question;
  double done = 0.0;  // of the work, within [0, 1]
  double length_km = 0.0;
  std::vector<RouteRow> rows = {};
  std::string trouble = {};
  bool operator==(const RouteSheet&) const = default;
};

struct AheadState {
  std::vector<Position> places = {};  // possible stops
  bool along = false;                 // the route there is shown
  std::optional<RouteSheet> route = {};
  bool operator==(const AheadState&) const = default;
};

}  // namespace mastwise
