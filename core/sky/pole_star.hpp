#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>

// Polaris as a compass: never more than 0.65 degree / cos(latitude) off true north.
// One thread at a time: see apparent_place.hpp.
namespace mastwise::sky {

// Why Polaris cannot be used. Only the traveler can see clouds and hills.
enum class NoPoleStar {
  TooFarSouth,  // below 5 degrees of northern latitude it is in the haze or below the horizon
  NotDark,      // the sun is less than 6 degrees below the horizon
};

struct PoleStar {
  Bearing<True> azimuth;
  double altitude_deg;           // over the horizon, without refraction
  double apparent_altitude_deg;  // as seen, with standard refraction
  std::optional<NoPoleStar> why_none;
};

// The place is always returned; `why_none` is the reason against using it. Azimuth and altitude are
// within 0.02 degree on the sky for the years 1990 to 2060. Source: the Hipparcos Catalog (ESA
// SP-1200, 1997), HIP 11767, with its proper motion; aberration by libnova's ln_get_equ_aber; then
// as at_equinox_of() and seen_from().
PoleStar pole_star_at(Position position, UtcTime time);

// The largest distance of Polaris from true north at `latitude_deg` (0 to 89), if it is
// `polar_distance_deg` from the pole: asin(sin(distance) / cos(latitude)), degrees. Source:
// spherical sine rule at elongation.
double greatest_azimuth_deg(double latitude_deg, double polar_distance_deg);

// Distance of Polaris from the pole at `time`, degrees. 0.63 in 2026, least (0.45) about 2100.
double polar_distance_deg(UtcTime time);

}  // namespace mastwise::sky
