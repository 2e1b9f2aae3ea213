#include "core/propagation/p1812/validation.hpp"

#include <cmath>
#include <string>

#include <fmt/format.h>

namespace mastwise::p1812 {

namespace {

struct Range {
  const char* name;
  const char* unit;
  double lowest;
  double highest;
};

std::optional<Error> check(const Range& range, double value, std::string where = {}) {
  if (value >= range.lowest && value <= range.highest) return std::nullopt;
  return Error{.what = fmt::format("{} of {} {} is not within {} to {} {}", range.name, value,
                                   range.unit, range.lowest, range.highest, range.unit),
               .where = std::move(where),
               .remedy = fmt::format("give a {} that P.1812 covers", range.name)};
}

constexpr Range kHeight = {"ground height", "m", -500.0, 10000.0};
constexpr Range kClutter = {"clutter height", "m", 0.0, 500.0};
constexpr Range kDistance = {"path length", "km", 0.25, 3000.0};
constexpr std::size_t kFewestPoints = 4;
constexpr double kShortestStepKm = 1e-6;

std::optional<Error> check_terminal_clutter(const TerminalClutter& clutter, double frequency_mhz,
                                            const char* where) {
  if (clutter.kind == TerminalClutter::Kind::none) return std::nullopt;
  if (frequency_mhz > 3000.0) {
    return Error{.what = fmt::format("terminal clutter is not modelled at {} MHz", frequency_mhz),
                 .where = where,
                 .remedy = "leave the terminal clutter out above 3,000 MHz (P.2108)"};
  }
  if (auto error = check({"clutter height", "m", 0.1, 500.0}, clutter.height_m, where)) {
    return error;
  }
  return check({"street width", "m", 1.0, 1000.0}, clutter.street_width_m, where);
}

Error size_error(const char* what, std::size_t size, std::size_t points) {
  return Error{.what = fmt::format("{} {} for {} ground heights", size, what, points),
               .where = "path profile",
               .remedy = "give one for each point, or none"};
}

std::string point_name(std::size_t point) {
  return fmt::format("path profile, point {}", point);
}

bool under_clutter(const Profile& profile, std::size_t neighbor, double height_m,
                   const TerminalClutter& clutter) {
  const bool under_own = clutter.kind != TerminalClutter::Kind::none && height_m < clutter.height_m;
  return under_own || (!profile.clutter_m.empty() && height_m < profile.clutter_m[neighbor]);
}

}  // namespace

std::optional<Error> check_link(const Link& link) {
  const struct {
    Range range;
    double value;
  } ranges[] = {
      {{"frequency", "MHz", 30.0, 6000.0}, link.frequency_mhz},
      {{"transmitter antenna height", "m", 1.0, 3000.0}, link.transmitter_height_m},
      {{"receiver antenna height", "m", 1.0, 3000.0}, link.receiver_height_m},
      {{"path latitude", "degrees", -90.0, 90.0}, link.path_latitude_deg},
      {{"refractivity gradient", "N-units/km", 0.0, 150.0}, link.refractivity.gradient_n_per_km},
      {{"sea-level refractivity", "N-units", 200.0, 500.0}, link.refractivity.sea_level_n},
      {{"transmitter's distance to the coast", "km", 0.0, 1e6}, link.transmitter_coast_km},
      {{"receiver's distance to the coast", "km", 0.0, 1e6}, link.receiver_coast_km},
      {{"location deviation", "dB", 0.0, 30.0}, link.location_deviation_db.value_or(0.0)},
      {{"prediction resolution", "m", 1.0, 10000.0}, link.prediction_resolution_m},
  };
  for (const auto& [range, value] : ranges) {
    if (auto error = check(range, value)) return error;
  }
  if (auto error = check_terminal_clutter(link.transmitter_clutter, link.frequency_mhz,
                                          "transmitter clutter")) {
    return error;
  }
  return check_terminal_clutter(link.receiver_clutter, link.frequency_mhz, "receiver clutter");
}

std::optional<Error> check_percentages(const Percentages& percentages) {
  if (auto error = check({"time percentage", "%", 1.0, 99.0}, percentages.time_percent)) {
    return error;
  }
  return check({"location percentage", "%", 1.0, 99.0}, percentages.locations_percent);
}

std::optional<Error> check_profile(const Profile& profile) {
  const std::size_t points = profile.heights_m.size();
  if (points < kFewestPoints) {
    return Error{.what = fmt::format("a profile of {} points", points),
                 .where = "path profile",
                 .remedy = fmt::format("give at least {}", kFewestPoints)};
  }
  const auto& distances = profile.distances_km;
  if (!distances.empty() && distances.size() != points) {
    return size_error("distances", distances.size(), points);
  }
  if (!profile.clutter_m.empty() && profile.clutter_m.size() != points) {
    return size_error("clutter heights", profile.clutter_m.size(), points);
  }
  if (!profile.zones.empty() && profile.zones.size() != points) {
    return size_error("zones", profile.zones.size(), points);
  }
  for (std::size_t i = 0; i < profile.zones.size(); ++i) {
    const Zone zone = profile.zones[i];
    if (zone != Zone::sea && zone != Zone::coastal_land && zone != Zone::inland) {
      return Error{.what = fmt::format("unknown zone {}", static_cast<int>(zone)),
                   .where = point_name(i),
                   .remedy = "1 is sea, 3 coastal land, 4 inland"};
    }
  }
  if (!distances.empty() && distances.front() != 0.0) {
    return Error{.what = fmt::format("the first distance is {} km", distances.front()),
                 .where = "path profile",
                 .remedy = "count distances from the transmitter: 0 first"};
  }
  return check(kDistance, distances.empty() ? profile.spacing_km * static_cast<double>(points - 1)
                                            : distances.back());
}

std::optional<Error> check_ground(const Profile& profile, const GroundSums& sums) {
  const bool heights_fit = sums.lowest_m >= kHeight.lowest && sums.highest_m <= kHeight.highest;
  const bool steps_fit = sums.shortest_step_km >= kShortestStepKm;
  if (std::isfinite(sums.v1) && heights_fit && steps_fit) return std::nullopt;
  const auto& distances = profile.distances_km;
  for (std::size_t i = 0; i < profile.heights_m.size(); ++i) {
    if (auto error = check(kHeight, profile.heights_m[i], point_name(i))) return error;
    if (i == 0) continue;
    const double step_km = distances.empty() ? profile.spacing_km : distances[i] - distances[i - 1];
    if (!(step_km >= kShortestStepKm)) {
      return Error{.what = fmt::format("the point is {} km from the previous one", step_km),
                   .where = point_name(i),
                   .remedy =
                       "give distances that increase by a millimeter or more from transmitter "
                       "to receiver"};
    }
  }
  return std::nullopt;
}

std::optional<Error> check_clutter(const Profile& profile) {
  bool fits = true;
  for (const double height_m : profile.clutter_m) {
    fits &= height_m >= kClutter.lowest && height_m <= kClutter.highest;
  }
  for (std::size_t i = 0; !fits && i < profile.clutter_m.size(); ++i) {
    if (auto error = check(kClutter, profile.clutter_m[i], point_name(i))) return error;
  }
  return std::nullopt;
}

Warnings warn_about(const Profile& profile, const Section& section, const Link& link) {
  Warnings warnings = 0;
  const auto warn_if = [&](bool condition, Warning warning) {
    if (condition) warnings |= static_cast<Warnings>(warning);
  };
  const auto outside = [](double value, double lowest, double highest) {
    return value < lowest || value > highest;
  };
  warn_if(outside(link.frequency_mhz, 40.0, 5000.0), Warning::frequency_near_limit);
  warn_if(outside(link.transmitter_height_m, 1.5, 2000.0) ||
              outside(link.receiver_height_m, 1.5, 2000.0),
          Warning::height_near_limit);
  warn_if(outside(section.length_km, 0.5, 1000.0), Warning::distance_near_limit);
  warn_if(section.points < 10 || section.length_km > static_cast<double>(section.points - 1),
          Warning::profile_coarse);
  warn_if(outside(link.refractivity.gradient_n_per_km, 20.0, 100.0) ||
              outside(link.refractivity.sea_level_n, 250.0, 400.0),
          Warning::refractivity_near_limit);
  warn_if(
      under_clutter(profile, 1, link.transmitter_height_m, link.transmitter_clutter) ||
          under_clutter(profile, section.points - 2, link.receiver_height_m, link.receiver_clutter),
      Warning::antenna_below_clutter);
  return warnings;
}

}  // namespace mastwise::p1812
