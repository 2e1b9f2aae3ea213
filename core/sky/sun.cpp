#include "core/sky/sun.hpp"

#include "core/angles/radian.hpp"
#include "core/sky/apparent_place.hpp"

#include <cmath>

#include <libnova/solar.h>

namespace mastwise::sky {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr double kSunrise_deg = -0.8333;
constexpr minutes kSearchStep{10};

// Bisects the time between a moment when `state` is as at the beginning and one when it is not.
template <class State>
UtcTime first_change_between(UtcTime before, UtcTime after, const State& state) {
  const auto begun = state(before);
  while (after - before > seconds(1)) {
    const UtcTime middle = before + (after - before) / 2;
    (state(middle) == begun ? before : after) = middle;
  }
  return after;
}

}  // namespace

SunPlace sun_at(Position position, UtcTime time) {
  ln_helio_posn geometric{};
  ln_get_solar_geom_coords(terrestrial_julian_day(time), &geometric);
  constexpr double kAberration_deg = 20.4898 / 3600.0;  // at 1 au
  const Equatorial j2000 =
      from_ecliptic_j2000(geometric.L - kAberration_deg / geometric.R, geometric.B);
  const Horizontal place = seen_from(position, time, at_equinox_of(time, j2000), geometric.R);
  return {place.azimuth, place.elevation_deg,
          place.elevation_deg + refraction_deg(place.elevation_deg)};
}

std::optional<NoShadow> why_no_shadow(const SunPlace& sun) {
  if (sun.elevation_deg < kSunrise_deg) return NoShadow::Night;
  if (sun.apparent_elevation_deg < kLowestForShadow_deg) return NoShadow::TooLow;
  if (sun.apparent_elevation_deg > kHighestForShadow_deg) return NoShadow::Overhead;
  return std::nullopt;
}

Shadow plumb_shadow(Position position, UtcTime time) {
  const SunPlace sun = sun_at(position, time);
  const SunPlace later = sun_at(position, time + minutes(5));
  const Turn in_a_minute =
      sun_at(position, time + seconds(30)).azimuth - sun_at(position, time - seconds(30)).azimuth;
  Shadow shadow{.sun = sun,
                .why_none = why_no_shadow(sun),
                .direction = std::nullopt,
                .direction_in_5_minutes = std::nullopt,
                .error_per_clock_minute_deg = in_a_minute.size_deg()};
  if (!shadow.why_none) shadow.direction = sun.azimuth.reciprocal();
  if (!why_no_shadow(later)) shadow.direction_in_5_minutes = later.azimuth.reciprocal();
  return shadow;
}

SunTimes sun_times(Position position, UtcTime time) {
  const auto up = [](const SunPlace& sun) { return sun.elevation_deg >= kSunrise_deg; };
  const auto usable = [](const SunPlace& sun) { return !why_no_shadow(sun); };
  const auto change_before = [&](UtcTime when, const auto& state) {
    return first_change_between(when - kSearchStep, when,
                                [&](UtcTime moment) { return state(sun_at(position, moment)); });
  };
  SunPlace before = sun_at(position, time);
  const bool usable_now = usable(before);
  SunTimes times{up(before), std::nullopt, std::nullopt, std::nullopt};
  for (UtcTime when = time + kSearchStep; when <= time + hours(48); when += kSearchStep) {
    const SunPlace sun = sun_at(position, when);
    if (up(sun) != up(before)) {
      std::optional<UtcTime>& event = up(sun) ? times.sunrise : times.sunset;
      if (!event) event = change_before(when, up);
    }
    if (!times.shadow_changes && usable(sun) != usable_now) {
      times.shadow_changes = change_before(when, usable);
    }
    if (times.sunrise && times.sunset && times.shadow_changes) break;
    before = sun;
  }
  return times;
}

}  // namespace mastwise::sky
