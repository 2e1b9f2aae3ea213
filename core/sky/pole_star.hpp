#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>

// Polaris as a compass: never more than 0.65 degree / cos(latitude) off true north.
// One thread at a time: see apparent_place.hpp.
namespace mastwise::sky {

// Why Polaris cannot be gone by. Clouds and hills are the traveler's to see.
enum class NoPoleStar {
  TooFarSouth,  // under 5 degrees of northern latitude it is in the haze or below the horizon
  NotDark,      // the sun is less than 6 degrees under the horizon
};

struct PoleStar {
  Bearing<True> azimuth;
  double altitude_deg;           // over the horizon, as if there were no air
  double apparent_altitude_deg;  // as seen, lifted by standard air
  std::optional<NoPoleStar> why_none;
};

// The place is given always, what speaks against using it in `why_none`. Azimuth and altitude are
// within 0.02 degree on the sky for the years 1990 to 2060.
// Source: the Hipparcos Catalog (ESA SP-1200, 1997), HIP 11767, with its proper motion;
// aberration by libnova's ln_get_equ_aber; then as at_equinox_of() and seen_from().
PoleStar pole_star_at(Position position, UtcTime time);

// The farthest that Polaris strays from true north in its round at `latitude_deg` (0 to 89) when it
// stands `polar_distance_deg` from the pole: asin(sin(distance) / cos(latitude)), degrees.
// Source: spherical sine rule at elongation.
double greatest_azimuth_deg(double latitude_deg, double polar_distance_deg);

// How far Polaris stands from the pole on `time`, degrees. 0.63 in 2026, least (0.45) about 2100.
double polar_distance_deg(UtcTime time);

}  // namespace mastwise::sky
