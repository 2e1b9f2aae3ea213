#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

// What sun and pole star share: from a place among the stars to a direction at a place on earth.
// libnova keeps its last answers in common variables: only one thread at a time may ask the sky.
namespace mastwise::sky {

// A direction among the stars. Right ascension in [0, 360), declination north positive, degrees.
struct Equatorial {
  double right_ascension_deg;
  double declination_deg;
};

// A direction from a place on earth, without the air's refraction.
struct Horizontal {
  Bearing<True> azimuth;
  double elevation_deg;  // over the horizon, [-90, 90]
};

// Julian day of `time` in terrestrial time, which ephemerides are counted in: UTC + 69.184 s, exact
// from 2017 until the next leap second (IERS Bulletin C). A second is 0.00001 degree of the sun.
double terrestrial_julian_day(UtcTime time);

// From the mean equator and equinox of J2000 to the true ones of `time`: precession and nutation.
// Sources: libnova's ln_get_equ_prec and ln_get_nutation (Meeus, Astronomical Algorithms, 2nd ed.,
// ch. 21 and 22; good to 0.1 arc seconds within a century of 2000).
Equatorial at_equinox_of(UtcTime time, Equatorial j2000);

// A direction in which nothing is near enough for the observer's place to matter.
inline constexpr double kInfinitelyFar_au = 1e9;

// Where a body stands at `position`, given its apparent place and its distance in astronomical
// units (over 0), by which the place seen from the earth's center becomes the place seen from its
// surface (WGS84). The earth's turning is taken from UTC, from which it strays by less than 0.9 s:
// 0.004 degree. At a pole the azimuth counts from the meridian of the position's longitude.
// Source: Meeus, Astronomical Algorithms, 2nd ed., ch. 11-13 and 40; libnova's mean sidereal time.
Horizontal seen_from(Position position, UtcTime time, Equatorial apparent, double distance_au);

// How much the air lifts a body of `elevation_deg` over the horizon, degrees: 0.5 at the horizon,
// nothing at the zenith. Standard air, 1010 hPa and 10 C; 0 for what is under the horizon even when
// lifted (-0.8333). Source: Saemundsson 1986 in Meeus, Astronomical Algorithms, 2nd ed., eq. 16.4.
double refraction_deg(double elevation_deg);

}  // namespace mastwise::sky
