#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace mastwise::reception {

// A place along a route, counted from its start.
struct RoutePoint {
  double at_km = 0.0;
  Position position;
};

// Places every `step_km` along the geodesics from point to point, the first and the last point
// included; the last step may be shorter. Errors: fewer than two points, no length, a step below
// 0.1 km, more than 10,000 places.
Result<std::vector<RoutePoint>> sample_route(std::span<const Position> points, double step_km);

// What is wanted at a place along a route: its chance, in percent, where it is known.
struct RouteChance {
  double at_km = 0.0;
  std::optional<double> chance_percent = {};
  bool operator==(const RouteChance&) const = default;
};

// A part of the route, from its first to its last place that is sure: what lies before and behind
// toward the next places is not counted. One place alone makes a stretch without length.
struct Stretch {
  double from_km = 0.0;
  double to_km = 0.0;
  double least_percent = 0.0;
  double mean_percent = 0.0;  // over the length, straight between places
  bool operator==(const Stretch&) const = default;
};

// The stretches all of whose places have a chance of at least `floor_percent`. A place whose chance
// is not known ends a stretch. `chances` by rising distance.
std::vector<Stretch> stretches_above(std::span<const RouteChance> chances, double floor_percent);

}  // namespace mastwise::reception
