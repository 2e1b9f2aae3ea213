#include "core/headings/sayings.hpp"

#include "core/geo/geodesic.hpp"
#include "core/headings/aim_words.hpp"
#include "core/headings/rig_words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr double kMinutesToNextSun = 5.0;

struct Said {
  SaidAs as;
  std::string words;
};

Error lacking(const char* what, const char* remedy) {
  return {.what = what, .where = "ways of saying a heading", .remedy = remedy};
}

// Fills in what the inputs tell about the errors besides the given ones.
HeadingContext context_of(const SayingInputs& inputs) {
  HeadingContext context = inputs.context;
  context.distance_m = inputs.card.distance_m;
  context.declination_sigma_deg = inputs.card.field.declination_sigma_deg;
  context.latitude_deg = inputs.from.latitude_deg();
  if (inputs.handle) {
    context.handle_zero_sigma_deg = inputs.handle->sigma_deg();
    context.handle_play_deg = inputs.handle->mechanism().play_deg;
  }
  if (inputs.sun) {
    const Turn turn = inputs.sun->azimuth_in_five_minutes - inputs.sun->azimuth;
    context.sun_turn_deg_per_min = turn.clockwise_deg() / kMinutesToNextSun;
  }
  if (inputs.landmark) {
    if (context.stop_error_m) {
      context.landmark_error_m = std::hypot(inputs.landmark->error_m, *context.stop_error_m);
    }
    context.landmark_distance_m = path_between(inputs.from, inputs.landmark->position).distance_m;
  }
  context.walk_length_m = inputs.walk_m;
  return context;
}

Result<Said> say_true(const SayingInputs& inputs) {
  const Bearing<True> bearing = inputs.card.bearing_true;
  return Said{bearing, "True bearing " + whole_degrees(bearing.degrees())};
}

Result<Said> say_grid(const SayingInputs& inputs) {
  const Bearing<Grid> bearing = inputs.card.bearing_grid;
  return Said{bearing, fmt::format("On a map with the grid of zone {}: {} from its grid lines",
                                   inputs.card.grid.name, whole_degrees(bearing.degrees()))};
}

std::optional<Error> no_needle(const SayingInputs& inputs) {
  if (inputs.card.field.zone != MagneticField::Zone::Blackout) return std::nullopt;
  return lacking("the earth's field is too weak here for any needle",
                 "take the sun, a landmark or a walked line");
}

Result<Said> say_magnetic(const SayingInputs& inputs) {
  if (auto refusal = no_needle(inputs)) return *std::move(refusal);
  const Bearing<Magnetic> bearing = inputs.card.bearing_magnetic;
  return Said{bearing, fmt::format("A plain compass, its own declination at 0, reads {}",
                                   whole_degrees(bearing.degrees()))};
}

Result<Said> say_set_compass(const SayingInputs& inputs) {
  if (auto refusal = no_needle(inputs)) return *std::move(refusal);
  const Bearing<True> bearing = inputs.card.bearing_true;
  return Said{bearing, fmt::format("Set your compass's own declination to {}, then read {}",
                                   declination_words(inputs.card.field.declination),
                                   whole_degrees(bearing.degrees()))};
}

Result<Said> say_rig_sides(const SayingInputs& inputs) {
  if (!inputs.card.rig_angle) {
    return lacking("it is not known where the nose points", "set the rig's heading");
  }
  return Said{*inputs.card.rig_angle, rig_words(*inputs.card.rig_angle)};
}

Result<Said> say_handle(const SayingInputs& inputs) {
  if (!inputs.handle) return lacking("the handle is not calibrated", "calibrate it at two points");
  if (!inputs.card.rig_angle) {
    return lacking("it is not known where the nose points", "set the rig's heading");
  }
  if (!inputs.handle_now) {
    return lacking("it is not known where the handle stands now", "read it");
  }
  auto turn = inputs.handle->turn_to(*inputs.card.rig_angle, *inputs.handle_now);
  if (!turn) return turn.error();
  std::string words = turn->words;
  return Said{std::move(turn).value(), std::move(words)};
}

Result<Said> say_sun(const SayingInputs& inputs) {
  if (!inputs.sun) return lacking("the sun is not up, or its place not known", "wait for the sun");
  const Bearing<True> heading = inputs.card.bearing_true;
  const FromShadow angle{
      .now = heading - inputs.sun->azimuth.reciprocal(),
      .in_five_minutes = heading - inputs.sun->azimuth_in_five_minutes.reciprocal()};
  return Said{angle, fmt::format("Look along a plumb line's shadow, away from the sun: the heading "
                                 "is {} now, {} in five minutes",
                                 aside_words(angle.now), aside_words(angle.in_five_minutes))};
}

Result<Said> say_pole_star(const SayingInputs& inputs) {
  if (!inputs.pole_star) {
    return lacking("the pole star is not to be seen, or its place not known",
                   "wait for a clear night in the north");
  }
  const Turn aside = inputs.card.bearing_true - *inputs.pole_star;
  return Said{aside, "Face the pole star: the heading is " + aside_words(aside)};
}

Result<Said> say_landmark(const SayingInputs& inputs) {
  if (!inputs.landmark) return lacking("no landmark is known", "give one and where it stands");
  const PathBetween path = path_between(inputs.from, inputs.landmark->position);
  if (path.distance_m <= 0.0) {
    return lacking("the landmark stands where the rig does", "take one farther away");
  }
  const Turn aside = inputs.card.bearing_true - path.bearing;
  return Said{aside,
              fmt::format("Face {}: the heading is {}", inputs.landmark->name, aside_words(aside))};
}

Result<Said> say_walk(const SayingInputs& inputs) {
  if (!inputs.walk_m || !std::isfinite(*inputs.walk_m) || *inputs.walk_m <= 0.0) {
    return lacking("it is not known how far one can walk here",
                   "give a length; 200 m is twice as good as 100");
  }
  const WalkTo walk{.target = destination(inputs.from, inputs.card.bearing_true, *inputs.walk_m),
                    .distance_m = *inputs.walk_m};
  return Said{
      walk, fmt::format("From the rig walk {:.0f} m until the receiver shows {:.6f}, "
                        "{:.6f}; rig and mark are then in line",
                        walk.distance_m, walk.target.latitude_deg(), walk.target.longitude_deg())};
}

struct Way {
  SayingKind kind;
  PointingMethod method;
  Result<Said> (*say)(const SayingInputs&);
};

// Another way of saying: its function above, its line here.
constexpr Way kWays[] = {
    {SayingKind::true_bearing, PointingMethod::bearing_alone, say_true},
    {SayingKind::grid_bearing, PointingMethod::bearing_alone, say_grid},
    {SayingKind::magnetic_bearing, PointingMethod::baseplate_compass, say_magnetic},
    {SayingKind::set_compass, PointingMethod::set_compass, say_set_compass},
    {SayingKind::rig_sides, PointingMethod::rig_sides, say_rig_sides},
    {SayingKind::handle, PointingMethod::handle, say_handle},
    {SayingKind::sun_shadow, PointingMethod::sun_shadow, say_sun},
    {SayingKind::pole_star, PointingMethod::pole_star, say_pole_star},
    {SayingKind::landmark, PointingMethod::landmark, say_landmark},
    {SayingKind::walked_line, PointingMethod::walked_line, say_walk},
};

Result<Saying> saying(const Way& way, const SayingInputs& inputs, const HeadingContext& context) {
  auto said = way.say(inputs);
  if (!said) return said.error();
  auto budget = heading_budget(way.method, context);
  if (!budget) return budget.error();
  const double sigma_deg = budget->total_deg;
  return Saying{way.kind,
                way.method,
                std::move(said->as),
                std::move(budget).value(),
                sigma_deg,
                std::move(said->words)};
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
    case SayingKind::pole_star:
      return "pole star";
    case SayingKind::landmark:
      return "landmark";
    case SayingKind::walked_line:
      return "walked line";
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

}  // namespace mastwise
