#include "core/reception/route.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::reception {
namespace {

constexpr double kLeastStep_km = 0.1;
constexpr double kMostPlaces = 10'000.0;

Error no_route(std::string what, const char* remedy) {
  return {.what = std::move(what), .where = "route", .remedy = remedy};
}

double length_km(std::span<const Position> points) {
  double length_m = 0.0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    length_m += path_between(points[i - 1], points[i]).distance_m;
  }
  return length_m / 1000.0;
}

Stretch stretch_of(std::span<const RouteChance> chances) {
  Stretch stretch{.from_km = chances.front().at_km,
                  .to_km = chances.back().at_km,
                  .least_percent = *chances.front().chance_percent,
                  .mean_percent = *chances.front().chance_percent};
  double area = 0.0;
  for (std::size_t i = 1; i < chances.size(); ++i) {
    const double here = *chances[i].chance_percent;
    stretch.least_percent = std::min(stretch.least_percent, here);
    area +=
        (chances[i].at_km - chances[i - 1].at_km) * (here + *chances[i - 1].chance_percent) / 2.0;
  }
  const double whole_km = stretch.to_km - stretch.from_km;
  if (whole_km > 0.0) stretch.mean_percent = area / whole_km;
  return stretch;
}

}  // namespace

Result<std::vector<RoutePoint>> sample_route(std::span<const Position> points, double step_km) {
  if (points.size() < 2)
    return no_route("the route has fewer than two points", "give start and end");
  if (!(step_km >= kLeastStep_km)) {
    return no_route(fmt::format("the step is {} km", step_km), "give 0.1 km or more");
  }
  const double whole_km = length_km(points);
  if (whole_km == 0.0) return no_route("all points are at one place", "give start and end");
  if (whole_km / step_km > kMostPlaces) {
    return no_route(
        fmt::format("{:.0f} km in steps of {} km are too many places", whole_km, step_km),
        "give a longer step");
  }
  std::vector<RoutePoint> places{{0.0, points.front()}};
  double passed_km = 0.0;  // before the leg
  std::size_t steps = 1;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const PathBetween leg = path_between(points[i - 1], points[i]);
    const double leg_km = leg.distance_m / 1000.0;
    for (double at_km = step_km * static_cast<double>(steps); at_km < passed_km + leg_km;
         at_km = step_km * static_cast<double>(++steps)) {
      places.push_back(
          {at_km, destination(points[i - 1], leg.bearing, 1000.0 * (at_km - passed_km))});
    }
    passed_km += leg_km;
  }
  places.push_back({passed_km, points.back()});
  return places;
}

std::vector<Stretch> stretches_above(std::span<const RouteChance> chances, double floor_percent) {
  const auto holds = [&](std::size_t i) {
    return chances[i].chance_percent && *chances[i].chance_percent >= floor_percent;
  };
  std::vector<Stretch> stretches;
  for (std::size_t first = 0; first < chances.size(); ++first) {
    if (!holds(first)) continue;
    std::size_t end = first + 1;
    while (end < chances.size() && holds(end)) ++end;
    stretches.push_back(stretch_of(chances.subspan(first, end - first)));
    first = end;
  }
  return stretches;
}

}  // namespace mastwise::reception
