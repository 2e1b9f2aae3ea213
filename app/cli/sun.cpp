#include "core/sky/sun.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/clocks.hpp"
#include "app/service/startup.hpp"
#include "app/words/headings.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/geo/notation.hpp"
#include "core/headings/heading_error.hpp"
#include "core/sky/guide_bodies.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun_marks.hpp"
#include "core/text/iso_time.hpp"

#include <array>
#include <cmath>
#include <iostream>
#include <memory>
#include <optional>
#include <vector>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct SunOptions {
  std::string at, time;
  std::optional<double> heading_deg;
  bool json = false;
};

struct Sky {
  Position place;
  UtcTime time;
  sky::Shadow shadow;
  sky::SunTimes times;
  sky::PoleStar star;
  std::vector<sky::Guide> guides;
  std::optional<Bearing<True>> heading;
  std::vector<sky::SunMark> marks;  // of the heading
};

json known(const std::optional<Bearing<True>>& bearing) {
  return bearing ? json(bearing->degrees()) : json(nullptr);
}

json known(const std::optional<UtcTime>& time) {
  return time ? json(iso_utc_seconds(*time)) : json(nullptr);
}

json marks_json(const std::vector<sky::SunMark>& marks) {
  constexpr std::array kLies{"along", "right", "against", "left"};  // in the order of ShadowLies
  json printed = json::array();
  for (const sky::SunMark& mark : marks) {
    printed.push_back({{"time", iso_utc_seconds(mark.time)},
                       {"shadow", kLies.at(static_cast<std::size_t>(mark.lies))},
                       {"turn_deg_per_min", mark.turn_deg_per_min}});
  }
  return printed;
}

json guides_json(const std::vector<sky::Guide>& guides) {
  json printed = json::array();
  for (const sky::Guide& guide : guides) {
    printed.push_back({{"name", words::guide_name(guide.body)},
                       {"azimuth_deg", guide.azimuth.degrees()},
                       {"altitude_deg", guide.apparent_altitude_deg},
                       {"magnitude", guide.magnitude},
                       {"turn_deg_per_min", guide.turn_deg_per_min},
                       {"sight_error_deg", star_sight_deg(guide.apparent_altitude_deg)}});
  }
  return printed;
}

json sky_json(const Sky& sky) {
  json printed{{"time", iso_utc_seconds(sky.time)},
               {"azimuth_deg", sky.shadow.sun.azimuth.degrees()},
               {"elevation_deg", sky.shadow.sun.elevation_deg},
               {"apparent_elevation_deg", sky.shadow.sun.apparent_elevation_deg},
               {"shadow_deg", known(sky.shadow.direction)},
               {"shadow_in_5_min_deg", known(sky.shadow.direction_in_5_minutes)},
               {"error_per_clock_minute_deg", sky.shadow.error_per_clock_minute_deg},
               {"sunrise", known(sky.times.sunrise)},
               {"sunset", known(sky.times.sunset)},
               {"shadow_changes", known(sky.times.shadow_changes)},
               {"polaris", nullptr},
               {"guides", guides_json(sky.guides)}};
  if (sky.heading) printed["shadow_marks"] = marks_json(sky.marks);
  if (sky.shadow.why_none) printed["why"] = words::why_no_shadow(*sky.shadow.why_none);
  if (sky.star.why_none) {
    printed["polaris_why"] = words::why_no_pole_star(*sky.star.why_none);
  } else {
    printed["polaris"] = {{"azimuth_deg", sky.star.azimuth.degrees()},
                          {"altitude_deg", sky.star.apparent_altitude_deg}};
  }
  return printed;
}

std::string in_48_hours(const std::optional<UtcTime>& time, const TimeZone& zone) {
  return time ? words::moment(*time, zone) : "not within 48 hours";
}

std::string sky_text(const Sky& sky, const LocalZone& local) {
  const TimeZone& zone = *local.clocks;
  std::string text;
  const auto line = [&](std::string_view label, const std::string& value) {
    text += fmt::format("  {:<18}{}\n", label, value);
  };
  const auto bearing = [](Bearing<True> direction) {
    return words::tenths_of_degree(direction.degrees()) + " true";
  };
  line("At", format_position(sky.place, Notation::Decimal));
  line("Time", words::moment(sky.time, zone));
  if (local.origin != LocalZone::Origin::Place) line("", words::zone_caution(local, sky.time));
  line("The sun", fmt::format("{}, {:.1f}° {} the horizon", bearing(sky.shadow.sun.azimuth),
                              std::fabs(sky.shadow.sun.apparent_elevation_deg),
                              sky.shadow.sun.apparent_elevation_deg < 0.0 ? "under" : "over"));
  line("Shadow points to", sky.shadow.direction
                               ? bearing(*sky.shadow.direction)
                               : "none: " + words::why_no_shadow(*sky.shadow.why_none));
  if (sky.shadow.direction_in_5_minutes) {
    line("In 5 minutes to", bearing(*sky.shadow.direction_in_5_minutes));
  }
  if (sky.shadow.direction) {
    line("A clock error", fmt::format("of 1 minute turns the shadow by {:.2f}°",
                                      sky.shadow.error_per_clock_minute_deg));
  }
  line(sky.shadow.why_none ? "Shadow from" : "Shadow until",
       in_48_hours(sky.times.shadow_changes, zone));
  line("Sunrise", in_48_hours(sky.times.sunrise, zone));
  line("Sunset", in_48_hours(sky.times.sunset, zone));
  line("Polaris", sky.star.why_none
                      ? "no: " + words::why_no_pole_star(*sky.star.why_none)
                      : fmt::format("{}, {:.1f}° over the horizon", bearing(sky.star.azimuth),
                                    sky.star.apparent_altitude_deg));
  for (const sky::Guide& guide : sky.guides) {
    if (guide.body == sky::GuideBody::polaris) continue;
    line(words::guide_name(guide.body),
         fmt::format("{}, {:.1f}° over the horizon, sighted to ± {:.1f}°", bearing(guide.azimuth),
                     guide.apparent_altitude_deg, star_sight_deg(guide.apparent_altitude_deg)));
  }
  if (sky.guides.empty()) line("Stars", "none can guide now");
  if (!sky.heading) return text;
  line("Heading", bearing(*sky.heading));
  if (sky.marks.empty()) line("The shadow", "does not mark it within 48 hours");
  for (const sky::SunMark& mark : sky.marks) {
    line("By the shadow",
         fmt::format("{}; it turns {:.2f}° a minute", words::sun_mark(mark, sky.time, zone),
                     std::fabs(mark.turn_deg_per_min)));
  }
  return text;
}

Result<Done> print_sky(const SunOptions& options) {
  const auto practice = service::load_practice();
  if (!practice) return practice.error();
  const auto place = options.at.empty() ? Result<Position>(practice->position)
                                        : position_argument("--at", options.at);
  if (!place) return place.error();
  const LocalZone zone = service::Clocks::of_this_system().at(*place);
  const auto time = date_argument("--time", options.time, *zone.clocks);
  if (!time) return time.error();
  Sky sky{.place = *place,
          .time = *time,
          .shadow = sky::plumb_shadow(*place, *time),
          .times = sky::sun_times(*place, *time),
          .star = sky::pole_star_at(*place, *time),
          .guides = sky::guides_now(*place, *time),
          .heading = std::nullopt,
          .marks = {}};
  if (options.heading_deg) {
    sky.heading = Bearing<True>::degrees(*options.heading_deg);
    sky.marks = sky::sun_marks(*place, *time, *sky.heading);
  }
  if (options.json) {
    print(sky_json(sky));
    return Done{};
  }
  if (options.at.empty()) std::cout << "PRACTICE AREA: invented stations and hills\n";
  std::cout << sky_text(sky, zone);
  return Done{};
}

}  // namespace

void add_sun(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<SunOptions>();
  CLI::App* verb = program.add_subcommand("sun", "Find true north by the sun's shadow or a star");
  verb->add_option("--at", options->at, "the place, in any notation (default: the practice area)");
  verb->add_option("--time", options->time,
                   "UTC time, such as 2026-07-02T18:00:00Z (default: now)");
  verb->add_option("--heading", options->heading_deg,
                   "a true heading, 0 to 360: prints when a plumb line's shadow marks it")
      ->check(CLI::Range(0.0, 360.0));
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_sky(*options); }; });
}

}  // namespace mastwise::cli
