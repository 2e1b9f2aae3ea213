#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

// Common steps for sun and pole star: from a place among the stars to a direction at a place on
// earth. libnova keeps its last results in global variables: only one thread at a time may call
// this.
namespace mastwise::sky {

// A direction among the stars. Right ascension in [0, 360), declination north positive, degrees.
struct Equatorial {
  double right_ascension_deg;
  double declination_deg;
};

// A direction from a place on earth, without refraction.
struct Horizontal {
  Bearing<True> azimuth;
  double elevation_deg;  // over the horizon, [-90, 90]
};

// Julian day of `time` in terrestrial time, the time scale of ephemerides: UTC + 69.184 s, exact
// from 2017 until the next leap second (IERS Bulletin C). A second is 0.00001 degree of the sun.
double terrestrial_julian_day(UtcTime time);

// From ecliptic longitude and latitude to right ascension and declination, both of J2000. Source:
// Meeus, Astronomical Algorithms, 2nd ed., eq. 13.3 and 13.4, with the obliquity of IAU 1976.
Equatorial from_ecliptic_j2000(double longitude_deg, double latitude_deg);

// A star as catalogs list it: its place at an epoch, at the equinox of J2000, and its motion.
struct CatalogStar {
  Equatorial place;
  double motion_east_mas;  // milliarcseconds a year, along the circle of declination
  double motion_north_mas;
  double epoch_jd;  // Julian day of the place
};
inline constexpr double kEpochJ2000_jd = 2451545.0;

// Where a star appears from the earth's center: its motion, then annual aberration, precession and
// nutation; no parallax, which is under 1 arc second for every star. Source: aberration by
// libnova's ln_get_equ_aber (Meeus, ch. 23); the rest as at_equinox_of().
Equatorial apparent_star(UtcTime time, const CatalogStar& star);

// From the mean equator and equinox of J2000 to the true ones of `time`: precession and nutation.
// Sources: libnova's ln_get_equ_prec and ln_get_nutation (Meeus, Astronomical Algorithms, 2nd ed.,
// ch. 21 and 22; accurate to 0.1 arc seconds within a century of 2000).
Equatorial at_equinox_of(UtcTime time, Equatorial j2000);

// The direction of a body so far away that the observer's place does not matter.
inline constexpr double kInfinitelyFar_au = 1e9;

// The direction of a body at `position`, from its apparent place and its distance in astronomical
// units (over 0). The distance converts the view from the earth's center to the view from its
// surface (WGS84). The earth's rotation uses UTC, which is less than 0.9 s off: 0.004 degree. At a
// pole the azimuth counts from the meridian of the position's longitude. Source: Meeus,
// Astronomical Algorithms, 2nd ed., ch. 11-13 and 40; libnova's mean sidereal time.
Horizontal seen_from(Position position, UtcTime time, Equatorial apparent, double distance_au);

// Refraction of a body at `elevation_deg` over the horizon, degrees: 0.5 at the horizon, 0 at the
// zenith. Standard air, 1010 hPa and 10 C; 0 for a body that stays below the horizon even when
// refracted (-0.8333). Source: Saemundsson 1986 in Meeus, Astronomical Algorithms, 2nd ed., eq.
// 16.4.
double refraction_deg(double elevation_deg);

}  // namespace mastwise::sky
