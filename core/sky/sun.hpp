#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>

// The sun as a compass: the shadow of a plumb line lies away from it.
// One thread at a time: see apparent_place.hpp.
namespace mastwise::sky {

// The middle of the sun's disc as seen from a place on the ground.
struct SunPlace {
  Bearing<True> azimuth;
  double elevation_deg;           // over the horizon, as if there were no air; [-90, 90]
  double apparent_elevation_deg;  // as seen, lifted by standard air
};

// Where the sun stands. Azimuth within 0.01 degree for the years 1900 to 2100 (0.004 of it is the
// earth's uneven turning), measured on the sky: near the zenith an azimuth is as unsure as that
// over the cosine of the elevation. At a pole see seen_from(). Source: VSOP87 by libnova's
// ln_get_solar_geom_coords, which is of the equinox of J2000, so that precession, nutation and
// aberration are added here (Meeus, Astronomical Algorithms, 2nd ed., ch. 25).
SunPlace sun_at(Position position, UtcTime time);

// Why there is no shadow to go by.
enum class NoShadow {
  Night,     // the sun is down
  TooLow,    // under 3 degrees: the shadow is long and faint, and hills stand before the sun
  Overhead,  // over 80 degrees: the shadow is short, and runs round within minutes
};

// The limits of the sun's elevation for a shadow that shows a direction. Common practice, no
// source.
inline constexpr double kLowestForShadow_deg = 3.0;
inline constexpr double kHighestForShadow_deg = 80.0;

// Nothing when the sun's shadow can be used.
std::optional<NoShadow> why_no_shadow(const SunPlace& sun);

// The shadow of a plumb line on level ground.
struct Shadow {
  SunPlace sun;
  std::optional<NoShadow> why_none;
  // Away from the sun, from the line's foot outward: now, and five minutes on, when one has walked
  // out and set it up. Each is empty when it cannot be used then.
  std::optional<Bearing<True>> direction;
  std::optional<Bearing<True>> direction_in_5_minutes;
  // How much a clock that is one minute wrong turns the sun's azimuth here and now, degrees, 0 and
  // more.
  double error_per_clock_minute_deg;
};

Shadow plumb_shadow(Position position, UtcTime time);

// The first rise and set after `time`. Empty where there is none within 48 hours: then the sun
// stays up or down, which `up_now` tells apart.
struct SunTimes {
  bool up_now;
  std::optional<UtcTime> sunrise, sunset;
  // When the shadow stops being usable, or becomes usable; empty if not within 48 hours.
  std::optional<UtcTime> shadow_changes;
};

// Rise and set are those of the sun's upper edge on a level horizon in standard air: the middle
// stands at -0.8333 degrees. Found by steps of ten minutes and halving to a second; a rise and set
// within the same ten minutes are not seen. Source: US Naval Observatory, definition of rise and
// set (34 arc minutes of refraction and 16 of the sun's half width).
SunTimes sun_times(Position position, UtcTime time);

}  // namespace mastwise::sky
