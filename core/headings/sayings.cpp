#include "core/headings/sayings.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise {
namespace {

constexpr double kMinutesToNextSun = 5.0;

Error lacking(const char* what, const char* remedy) {
  return {.what = what, .where = "heading", .remedy = remedy};
}

// What one turns from in place: what needs no sky comes first.
std::optional<FromTurn::Known> known_of(const SayingInputs& inputs) {
  if (inputs.landmark) return FromTurn::Known::landmark;
  if (inputs.sun) return FromTurn::Known::shadow;
  if (!inputs.guides.empty()) return FromTurn::Known::star;
  return std::nullopt;
}

std::optional<double> known_direction_sigma_deg(const SayingInputs& inputs,
                                                const HeadingContext& context) {
  const auto known = known_of(inputs);
  if (!known) return std::nullopt;
  if (*known == FromTurn::Known::landmark) {
    if (!context.landmark_error_m || !(*context.landmark_distance_m > 0.0)) return std::nullopt;
    return std::hypot(kSight_deg,
                      angle_of_error_deg(*context.landmark_error_m, *context.landmark_distance_m));
  }
  if (!context.clock_error_min) return std::nullopt;
  if (*known == FromTurn::Known::star) {
    return std::hypot(star_sight_deg(*context.star_altitude_deg),
                      *context.clock_error_min * *context.star_turn_deg_per_min);
  }
  const Turn turn = inputs.sun->azimuth_in_five_minutes - inputs.sun->azimuth;
  return std::hypot(kSight_deg,
                    *context.clock_error_min * turn.clockwise_deg() / kMinutesToNextSun);
}

// Fills in the errors that follow from the other inputs.
HeadingContext context_of(const SayingInputs& inputs) {
  HeadingContext context = inputs.context;
  context.distance_m = inputs.card.distance_m;
  context.declination_sigma_deg = inputs.card.field.declination_sigma_deg;
  context.latitude_deg = inputs.from.latitude_deg();
  if (inputs.handle) {
    context.handle_zero_sigma_deg = inputs.handle->sigma_deg();
    context.handle_play_deg = inputs.handle->mechanism().play_deg;
  }
  if (!inputs.sun_marks.empty()) {
    context.sun_turn_deg_per_min = inputs.sun_marks.front().turn_deg_per_min;
  } else if (inputs.sun) {
    const Turn turn = inputs.sun->azimuth_in_five_minutes - inputs.sun->azimuth;
    context.sun_turn_deg_per_min = turn.clockwise_deg() / kMinutesToNextSun;
  }
  if (!inputs.guides.empty()) {
    context.star_turn_deg_per_min = inputs.guides.front().turn_deg_per_min;
    context.star_altitude_deg = inputs.guides.front().apparent_altitude_deg;
  }
  if (inputs.landmark) {
    if (context.stop_error_m) {
      context.landmark_error_m = std::hypot(inputs.landmark->error_m, *context.stop_error_m);
    }
    context.landmark_distance_m = path_between(inputs.from, inputs.landmark->position).distance_m;
  }
  context.walk_length_m = inputs.walk_m;
  context.known_direction_sigma_deg = known_direction_sigma_deg(inputs, context);
  return context;
}

Result<SaidAs> say_true(const SayingInputs& inputs) {
  return SaidAs(inputs.card.bearing_true);
}

Result<SaidAs> say_grid(const SayingInputs& inputs) {
  return SaidAs(OnGrid{inputs.card.bearing_grid, inputs.card.grid.name});
}

std::optional<Error> no_needle(const SayingInputs& inputs) {
  if (inputs.card.field.zone != MagneticField::Zone::Blackout) return std::nullopt;
  return lacking("the earth's field is too weak here for any compass",
                 "use the sun, a landmark or a walked line");
}

Result<SaidAs> say_magnetic(const SayingInputs& inputs) {
  if (auto refusal = no_needle(inputs)) return *std::move(refusal);
  return SaidAs(inputs.card.bearing_magnetic);
}

Result<SaidAs> say_set_compass(const SayingInputs& inputs) {
  if (auto refusal = no_needle(inputs)) return *std::move(refusal);
  return SaidAs(
      OnSetCompass{inputs.card.field.declination, inputs.card.bearing_true + inputs.compass_off});
}

Result<SaidAs> say_rig_sides(const SayingInputs& inputs) {
  if (!inputs.card.rig_angle) {
    return lacking("the rig heading is not known", "set where the nose points");
  }
  return SaidAs(*inputs.card.rig_angle);
}

Result<SaidAs> say_handle(const SayingInputs& inputs) {
  if (!inputs.handle) return lacking("the handle is not calibrated", "calibrate it at two points");
  if (!inputs.card.rig_angle) {
    return lacking("the rig heading is not known", "set where the nose points");
  }
  if (!inputs.handle_now) {
    return lacking("the present reading of the handle is unknown", "enter what it reads");
  }
  auto turn = inputs.handle->turn_to(*inputs.card.rig_angle, *inputs.handle_now);
  if (!turn) return turn.error();
  return SaidAs(*std::move(turn));
}

Result<SaidAs> say_sun(const SayingInputs& inputs) {
  if (!inputs.sun && inputs.sun_marks.empty()) {
    return lacking("the sun is not up", "wait for the sun");
  }
  FromShadow shadow{.now = inputs.now, .marks = inputs.sun_marks};
  const Bearing<True> heading = inputs.card.bearing_true;
  if (inputs.sun) {
    shadow.angle =
        ShadowAngle{.now = heading - inputs.sun->azimuth.reciprocal(),
                    .in_five_minutes = heading - inputs.sun->azimuth_in_five_minutes.reciprocal()};
  }
  return SaidAs(std::move(shadow));
}

Result<SaidAs> say_star(const SayingInputs& inputs) {
  if (inputs.guides.empty()) {
    return lacking("no moon, planet or bright star can guide now", "wait for a clear night");
  }
  FromStars stars;
  for (const sky::Guide& guide : inputs.guides) {
    stars.push_back({.body = guide.body,
                     .azimuth = guide.azimuth,
                     .altitude_deg = guide.apparent_altitude_deg,
                     .aside = inputs.card.bearing_true - guide.azimuth});
  }
  return SaidAs(std::move(stars));
}

Result<SaidAs> say_landmark(const SayingInputs& inputs) {
  if (!inputs.landmark) return lacking("no landmark is known", "enter the position of one");
  const PathBetween path = path_between(inputs.from, inputs.landmark->position);
  if (path.distance_m <= 0.0) {
    return lacking("the landmark is where the rig is", "choose one farther away");
  }
  return SaidAs(FromLandmark{.aside = inputs.card.bearing_true - path.bearing,
                             .name = inputs.landmark->name,
                             .town = inputs.landmark->town});
}

Result<SaidAs> say_walk(const SayingInputs& inputs) {
  if (!inputs.walk_m || !std::isfinite(*inputs.walk_m) || *inputs.walk_m <= 0.0) {
    return lacking("the length of the walk is not known",
                   "enter a length; 200 m is twice as exact as 100 m");
  }
  return SaidAs(WalkTo{.target = destination(inputs.from, inputs.card.bearing_true, *inputs.walk_m),
                       .distance_m = *inputs.walk_m});
}

Result<SaidAs> say_turn(const SayingInputs& inputs) {
  if (auto refusal = no_needle(inputs)) return *std::move(refusal);
  const auto known = known_of(inputs);
  if (!known) {
    return lacking("no landmark, sun or star to turn from is known",
                   "enter the position of a landmark");
  }
  FromTurn turn{.known = *known, .aside = Turn()};
  const Bearing<True> heading = inputs.card.bearing_true;
  if (*known == FromTurn::Known::landmark) {
    const auto landmark = say_landmark(inputs);
    if (!landmark) return landmark.error();
    turn.landmark = std::get<FromLandmark>(*landmark);
    turn.aside = turn.landmark.aside;
  } else if (*known == FromTurn::Known::shadow) {
    turn.aside = heading - inputs.sun->azimuth.reciprocal();
  } else {
    turn.star = inputs.guides.front().body;
    turn.aside = heading - inputs.guides.front().azimuth;
  }
  return SaidAs(std::move(turn));
}

struct Way {
  SayingKind kind;
  PointingMethod method;
  Result<SaidAs> (*say)(const SayingInputs&);
};

// To add a way: write its function above and its line here.
constexpr Way kWays[] = {
    {SayingKind::true_bearing, PointingMethod::bearing_alone, say_true},
    {SayingKind::grid_bearing, PointingMethod::bearing_alone, say_grid},
    {SayingKind::magnetic_bearing, PointingMethod::baseplate_compass, say_magnetic},
    {SayingKind::set_compass, PointingMethod::set_compass, say_set_compass},
    {SayingKind::rig_sides, PointingMethod::rig_sides, say_rig_sides},
    {SayingKind::handle, PointingMethod::handle, say_handle},
    {SayingKind::sun_shadow, PointingMethod::sun_shadow, say_sun},
    {SayingKind::star, PointingMethod::star, say_star},
    {SayingKind::landmark, PointingMethod::landmark, say_landmark},
    {SayingKind::walked_line, PointingMethod::walked_line, say_walk},
    {SayingKind::turn_in_place, PointingMethod::turn_in_place, say_turn},
};

Result<Saying> saying(const Way& way, const SayingInputs& inputs, const HeadingContext& context) {
  auto said = way.say(inputs);
  if (!said) return said.error();
  auto budget = heading_budget(way.method, context);
  if (!budget) return budget.error();
  const double sigma_deg = budget->total_deg;
  return Saying{way.kind, way.method, std::move(said).value(), std::move(budget).value(),
                sigma_deg};
}

}  // namespace

std::string_view to_text(SayingKind kind) {
  switch (kind) {
    case SayingKind::true_bearing:
      return "true";
    case SayingKind::grid_bearing:
      return "grid";
    case SayingKind::magnetic_bearing:
      return "magnetic";
    case SayingKind::set_compass:
      return "compass with its declination set";
    case SayingKind::rig_sides:
      return "rig sides";
    case SayingKind::handle:
      return "handle";
    case SayingKind::sun_shadow:
      return "sun shadow";
    case SayingKind::star:
      return "star";
    case SayingKind::landmark:
      return "landmark";
    case SayingKind::walked_line:
      return "walked line";
    case SayingKind::turn_in_place:
      return "turn in place";
  }
  return {};
}

Sayings say_heading(const SayingInputs& inputs) {
  const HeadingContext context = context_of(inputs);
  Sayings all;
  for (const Way& way : kWays) {
    auto one = saying(way, inputs, context);
    if (one) {
      all.sayings.push_back(std::move(one).value());
    } else {
      all.left_out.push_back({way.kind, one.error()});
    }
  }
  std::stable_sort(all.sayings.begin(), all.sayings.end(),
                   [](const Saying& a, const Saying& b) { return a.sigma_deg < b.sigma_deg; });
  return all;
}

bool needs_sky(const Saying& saying) {
  if (const auto* turn = std::get_if<FromTurn>(&saying.said_as)) {
    return turn->known != FromTurn::Known::landmark;
  }
  return saying.kind == SayingKind::sun_shadow || saying.kind == SayingKind::star;
}

const Saying* best_way(std::span<const Saying> sayings, bool sky_seen) {
  const Saying* best = nullptr;
  for (const Saying& one : sayings) {
    const bool usable =
        one.method != PointingMethod::bearing_alone && (sky_seen || !needs_sky(one));
    if (usable && (best == nullptr || one.sigma_deg < best->sigma_deg)) best = &one;
  }
  return best;
}

}  // namespace mastwise
