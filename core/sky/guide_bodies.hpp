#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <cstdint>
#include <optional>
#include <vector>

// The moon, planets and bright stars as a compass: their azimuth is computed, so a person who faces
// one knows where north is. One thread at a time: see apparent_place.hpp.
namespace mastwise::sky {

enum class GuideBody : std::uint8_t {
  moon,
  venus,
  mars,
  jupiter,
  saturn,
  polaris,
  // the brightest stars, brightest first
  sirius,
  canopus,
  rigil_kentaurus,
  arcturus,
  vega,
  capella,
  rigel,
  procyon,
  achernar,
  betelgeuse,
  hadar,
  altair,
  acrux,
  aldebaran,
  antares,
  spica,
  pollux,
  fomalhaut,
  deneb,
  mimosa,
  regulus,
  gacrux,
};
inline constexpr int kGuideBodies = static_cast<int>(GuideBody::gacrux) + 1;

// Why a body cannot guide. Only the traveler can see clouds and hills.
enum class NoGuide : std::uint8_t {
  Daylight,  // the sun is less than 6 degrees below the horizon; a moon half lit shows by day too
  TooLow,    // in haze, behind hills or below the horizon
  TooHigh,   // a direction is hard to sight
  TooThin,   // the moon, near new
};

// Common practice, no source. Polaris hardly moves, so it may stand as low as 5 degrees, which
// is the limit of pole_star_at(), and at any height.
inline constexpr double kLowestGuide_deg = 10.0;
inline constexpr double kHighestGuide_deg = 60.0;

struct Guide {
  GuideBody body;
  Bearing<True> azimuth;
  double altitude_deg;           // over the horizon, without refraction; [-90, 90]
  double apparent_altitude_deg;  // as seen, with standard refraction
  double magnitude;              // smaller is brighter; Sirius is -1.5
  // How fast the azimuth changes as the earth turns, degrees a minute, clockwise over 0.
  double turn_deg_per_min;
  std::optional<NoGuide> why_none;
  bool operator==(const Guide&) const = default;
};

// The place is always returned; `why_none` is the reason against using it. Measured on the sky from
// 2024 to 2040 it is within 0.001 degree of an independent ephemeris, the moon within 0.004; both
// leave out the earth's uneven rotation, which is up to 0.004 more. The azimuth errs by that
// divided by the cosine of the altitude. Sources: the moon by libnova's ELP 2000-82B with its
// parallax, planets by libnova's VSOP87 with light time and aberration; stars by positions and
// proper motions of the Hipparcos Catalog (ESA SP-1200, 1997), moved to the epoch J2000 (from
// memory), Polaris by pole_star_at(). Magnitudes: planets by libnova, Saturn without its rings;
// stars from memory, to 0.1; the moon's by Allen, Astrophysical Quantities, its phase law (from
// memory). The turn: sin(latitude) - cos(latitude) tan(altitude) cos(azimuth) times the earth's
// 0.2507 degree a minute (any text of spherical astronomy).
Guide guide_at(GuideBody body, Position position, UtcTime time);

// The bodies that can guide now, the best first: the moon, which nobody mistakes; Polaris, which
// hardly moves; then the brighter and lower ones. 60 degrees of height count as much as two
// magnitudes [common practice, no source].
std::vector<Guide> guides_now(Position position, UtcTime time);

}  // namespace mastwise::sky
