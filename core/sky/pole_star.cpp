#include "core/sky/pole_star.hpp"

#include "core/angles/radian.hpp"
#include "core/sky/apparent_place.hpp"
#include "core/sky/sun.hpp"

#include <cmath>

#include <libnova/aberration.h>

namespace mastwise::sky {
namespace {

// Hipparcos main catalog, HIP 11767, equinox J2000 (ICRS), epoch J1991.25.
constexpr double kRightAscension_deg = 37.94614689;
constexpr double kDeclination_deg = 89.26413805;
constexpr double kMotionEast_mas = 44.22;  // a year, along the circle of declination
constexpr double kMotionNorth_mas = -11.74;
constexpr double kEpoch_jd = 2448349.0625;

Equatorial apparent_place(UtcTime time) {
  const double day = terrestrial_julian_day(time);
  const double years = (day - kEpoch_jd) / 365.25;
  constexpr double kMas = 1.0 / 3.6e6;
  ln_equ_posn moved{
      kRightAscension_deg + years * kMotionEast_mas * kMas / std::cos(kDeclination_deg * kRadian),
      kDeclination_deg + years * kMotionNorth_mas * kMas};
  ln_equ_posn aberrated{};
  ln_get_equ_aber(&moved, day, &aberrated);
  return at_equinox_of(time, {aberrated.ra, aberrated.dec});
}

std::optional<NoPoleStar> why_none(Position position, UtcTime time) {
  constexpr double kSouthernmost_deg = 5.0;
  constexpr double kDark_deg = -6.0;  // the end of civil twilight
  if (position.latitude_deg() < kSouthernmost_deg) return NoPoleStar::TooFarSouth;
  if (sun_at(position, time).elevation_deg > kDark_deg) return NoPoleStar::NotDark;
  return std::nullopt;
}

}  // namespace

PoleStar pole_star_at(Position position, UtcTime time) {
  const Horizontal place = seen_from(position, time, apparent_place(time), kInfinitelyFar_au);
  return {place.azimuth, place.elevation_deg,
          place.elevation_deg + refraction_deg(place.elevation_deg), why_none(position, time)};
}

double greatest_azimuth_deg(double latitude_deg, double polar_distance_deg) {
  return std::asin(std::sin(polar_distance_deg * kRadian) / std::cos(latitude_deg * kRadian)) /
         kRadian;
}

double polar_distance_deg(UtcTime time) {
  return 90.0 - apparent_place(time).declination_deg;
}

}  // namespace mastwise::sky
