#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace mastwise::reception {

// A place along a route, by its distance from the start.
struct RoutePoint {
  double at_km = 0.0;
  Position position;
};

// Places every `step_km` along the geodesics from point to point, including the first and the last
// point; the last step may be shorter. Errors: fewer than two points, zero length, a step below 0.1
// km, more than 10,000 places.
Result<std::vector<RoutePoint>> sample_route(std::span<const Position> points, double step_km);

// The chance of the wanted stations at a place along a route, in percent, if known.
struct RouteChance {
  double at_km = 0.0;
  std::optional<double> chance_percent = {};
  bool operator==(const RouteChance&) const = default;
};

// A part of the route, from its first to its last place above the floor; the way to the next places
// on either side does not count. A single place makes a stretch of zero length.
struct Stretch {
  double from_km = 0.0;
  double to_km = 0.0;
  double least_percent = 0.0;
  double mean_percent = 0.0;  // over the length, linear between places
  bool operator==(const Stretch&) const = default;
};

// The stretches where every place has a chance of at least `floor_percent`. A place with an unknown
// chance ends a stretch. `chances` by rising distance.
std::vector<Stretch> stretches_above(std::span<const RouteChance> chances, double floor_percent);

}  // namespace mastwise::reception
