#include "core/sky/sun.hpp"

#include "core/angles/radian.hpp"
#include "core/sky/apparent_place.hpp"

#include <array>
#include <cmath>
#include <cstdint>

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

// From the earth's center, without aberration; at the equinox of J2000.
struct Geometric {
  double longitude_deg, latitude_deg, distance_au;
};

using HalfDays = std::chrono::sys_time<std::chrono::duration<std::int64_t, std::ratio<43'200>>>;

// The series take a thousand cosines, and a search asks for hundreds of places of the same day.
Geometric geometric_at(HalfDays node) {
  struct Slot {
    HalfDays node = HalfDays::min();
    Geometric place{};
  };
  thread_local std::array<Slot, 8> slots;
  Slot& slot = slots[static_cast<std::size_t>(node.time_since_epoch().count() & 7)];
  if (slot.node != node) {
    ln_helio_posn computed{};
    ln_get_solar_geom_coords(terrestrial_julian_day(node), &computed);
    slot = {node, {computed.L, computed.B, computed.R}};
  }
  return slot.place;
}

// By Lagrange's cubic between four places half a day apart, which is within 0.001 arc seconds of
// the series.
Geometric geometric_at(UtcTime time) {
  const HalfDays before = std::chrono::floor<HalfDays::duration>(time);
  const double x = std::chrono::duration<double, HalfDays::period>(time - before).count();
  const std::array weights{-x * (x - 1.0) * (x - 2.0) / 6.0,
                           (x + 1.0) * (x - 1.0) * (x - 2.0) / 2.0,
                           -(x + 1.0) * x * (x - 2.0) / 2.0, (x + 1.0) * x * (x - 1.0) / 6.0};
  const double start_deg = geometric_at(before).longitude_deg;
  Geometric sum{start_deg, 0.0, 0.0};
  for (int i = 0; i < 4; ++i) {
    const Geometric place = geometric_at(before + HalfDays::duration(i - 1));
    const double weight = weights[static_cast<std::size_t>(i)];
    sum.longitude_deg += weight * std::remainder(place.longitude_deg - start_deg, 360.0);
    sum.latitude_deg += weight * place.latitude_deg;
    sum.distance_au += weight * place.distance_au;
  }
  return sum;
}

}  // namespace

SunPlace sun_at(Position position, UtcTime time) {
  const Geometric geometric = geometric_at(time);
  constexpr double kAberration_deg = 20.4898 / 3600.0;  // at 1 au
  const Equatorial j2000 = from_ecliptic_j2000(
      geometric.longitude_deg - kAberration_deg / geometric.distance_au, geometric.latitude_deg);
  const Horizontal place =
      seen_from(position, time, at_equinox_of(time, j2000), geometric.distance_au);
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
