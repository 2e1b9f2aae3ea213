#include "core/sky/pole_star.hpp"

#include "core/angles/radian.hpp"
#include "core/sky/apparent_place.hpp"
#include "core/sky/sun.hpp"

#include <cmath>

namespace mastwise::sky {
namespace {

// Hipparcos main catalog, HIP 11767, equinox J2000 (ICRS), epoch J1991.25.
constexpr CatalogStar kPolaris{.place = {37.94614689, 89.26413805},
                               .motion_east_mas = 44.22,
                               .motion_north_mas = -11.74,
                               .epoch_jd = 2448349.0625};

std::optional<NoPoleStar> why_none(Position position, UtcTime time) {
  constexpr double kSouthernmost_deg = 5.0;
  constexpr double kDark_deg = -6.0;  // the end of civil twilight
  if (position.latitude_deg() < kSouthernmost_deg) return NoPoleStar::TooFarSouth;
  if (sun_at(position, time).elevation_deg > kDark_deg) return NoPoleStar::NotDark;
  return std::nullopt;
}

}  // namespace

PoleStar pole_star_at(Position position, UtcTime time) {
  const Horizontal place =
      seen_from(position, time, apparent_star(time, kPolaris), kInfinitelyFar_au);
  return {place.azimuth, place.elevation_deg,
          place.elevation_deg + refraction_deg(place.elevation_deg), why_none(position, time)};
}

double greatest_azimuth_deg(double latitude_deg, double polar_distance_deg) {
  return std::asin(std::sin(polar_distance_deg * kRadian) / std::cos(latitude_deg * kRadian)) /
         kRadian;
}

double polar_distance_deg(UtcTime time) {
  return 90.0 - apparent_star(time, kPolaris).declination_deg;
}

}  // namespace mastwise::sky
