#pragma once

#include "app/model/stations.hpp"
#include "core/geo/position.hpp"
#include "core/reception/route.hpp"

#include <optional>
#include <string>
#include <vector>

// What can be received along the way to places ahead.
namespace mastwise {

struct Model;

struct RouteQuestion {
  StationsQuestion here;  // what a survey depends on
  std::vector<Position> points = {};
  std::vector<std::string> networks = {};
  double floor_percent = kUsualFloor_percent;
  double step_km = 0.0;  // from survey to survey; 0: as the length asks for
  bool operator==(const RouteQuestion&) const = default;
};

// One network along the way.
struct RouteRow {
  std::string network = {};
  std::vector<reception::RouteChance> chances = {};  // of its best station, in driving order
  std::vector<reception::Stretch> stretches = {};    // where the floor holds
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

// What the worker should be asked now; nothing while the way is not looked at, or where nothing is
// wanted or nowhere is to be gone.
std::optional<RouteQuestion> route_question(const Model& model);

}  // namespace mastwise
