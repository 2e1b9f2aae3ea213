#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>

// The sun as a compass: the shadow of a plumb line points away from it.
// One thread at a time: see apparent_place.hpp.
namespace mastwise::sky {

// The middle of the sun's disc as seen from a place on the ground.
struct SunPlace {
  Bearing<True> azimuth;
  double elevation_deg;           // over the horizon, without refraction; [-90, 90]
  double apparent_elevation_deg;  // as seen, with standard refraction
};

// The sun's direction. Azimuth within 0.01 degree for the years 1900 to 2100 (0.004 of it is the
// earth's uneven rotation), measured on the sky: near the zenith the azimuth's error is that
// divided by the cosine of the elevation. At a pole see seen_from(). Source: VSOP87 by libnova's
// ln_get_solar_geom_coords, for the equinox of J2000, so precession, nutation and aberration are
// added here (Meeus, Astronomical Algorithms, 2nd ed., ch. 25).
SunPlace sun_at(Position position, UtcTime time);

// Why the shadow cannot be used.
enum class NoShadow {
  Night,     // the sun is down
  TooLow,    // under 3 degrees: the shadow is long and faint, and hills hide the sun
  Overhead,  // over 80 degrees: the shadow is short and turns within minutes
};

// Limits of the sun's elevation for a usable shadow. Common practice, no source.
inline constexpr double kLowestForShadow_deg = 3.0;
inline constexpr double kHighestForShadow_deg = 80.0;

// std::nullopt if the sun's shadow can be used.
std::optional<NoShadow> why_no_shadow(const SunPlace& sun);

// The shadow of a plumb line on level ground.
struct Shadow {
  SunPlace sun;
  std::optional<NoShadow> why_none;
  // Direction away from the sun, from the line's foot outward: now, and in five minutes, after
  // walking out and setting it up. Empty if unusable at that time.
  std::optional<Bearing<True>> direction;
  std::optional<Bearing<True>> direction_in_5_minutes;
  // Error of the sun's azimuth here and now for a clock that is one minute wrong, degrees, 0 or
  // more.
  double error_per_clock_minute_deg;
};

Shadow plumb_shadow(Position position, UtcTime time);

// The first rise and set after `time`. Empty if there is none within 48 hours: then the sun stays
// up or down, as `up_now` tells.
struct SunTimes {
  bool up_now;
  std::optional<UtcTime> sunrise, sunset;
  // When the shadow stops or starts being usable; empty if not within 48 hours.
  std::optional<UtcTime> shadow_changes;
};

// Rise and set of the sun's upper edge on a level horizon in standard air: its middle is at -0.8333
// degrees. Found in steps of ten minutes and by bisection to a second; a rise and set within the
// same ten minutes are missed. Source: US Naval Observatory, definition of rise and set (34 arc
// minutes of refraction and 16 of the sun's half width).
SunTimes sun_times(Position position, UtcTime time);

}  // namespace mastwise::sky
