#include "core/sky/guide_bodies.hpp"

#include "core/angles/radian.hpp"
#include "core/sky/apparent_place.hpp"
#include "core/sky/pole_star.hpp"
#include "core/sky/sun.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <libnova/aberration.h>
#include <libnova/jupiter.h>
#include <libnova/lunar.h>
#include <libnova/mars.h>
#include <libnova/saturn.h>
#include <libnova/venus.h>

namespace mastwise::sky {
namespace {

struct Star {
  CatalogStar catalog;
  double magnitude;
};

constexpr double kPolarisMagnitude = 2.0;

// In the order of GuideBody from Sirius on.
constexpr std::array kStars{
    Star{{{101.28715, -16.71612}, -546.0, -1223.1, kEpochJ2000_jd}, -1.46},  // Sirius
    Star{{{95.98796, -52.69566}, 19.9, 23.2, kEpochJ2000_jd}, -0.74},        // Canopus
    Star{{{219.90206, -60.83399}, -3679.2, 473.7, kEpochJ2000_jd}, -0.27},   // Rigil Kentaurus
    Star{{{213.91530, 19.18241}, -1093.4, -2000.1, kEpochJ2000_jd}, -0.05},  // Arcturus
    Star{{{279.23473, 38.78369}, 200.9, 286.2, kEpochJ2000_jd}, 0.03},       // Vega
    Star{{{79.17233, 45.99799}, 75.2, -426.9, kEpochJ2000_jd}, 0.08},        // Capella
    Star{{{78.63447, -8.20164}, 1.3, 0.5, kEpochJ2000_jd}, 0.13},            // Rigel
    Star{{{114.82550, 5.22499}, -714.6, -1036.8, kEpochJ2000_jd}, 0.34},     // Procyon
    Star{{{24.42852, -57.23675}, 87.0, -38.2, kEpochJ2000_jd}, 0.46},        // Achernar
    Star{{{88.79294, 7.40706}, 27.5, 11.3, kEpochJ2000_jd}, 0.5},            // Betelgeuse
    Star{{{210.95585, -60.37304}, -33.3, -23.2, kEpochJ2000_jd}, 0.61},      // Hadar
    Star{{{297.69583, 8.86832}, 536.2, 385.3, kEpochJ2000_jd}, 0.76},        // Altair
    Star{{{186.64957, -63.09909}, -35.8, -14.9, kEpochJ2000_jd}, 0.76},      // Acrux
    Star{{{68.98016, 16.50930}, 63.5, -188.9, kEpochJ2000_jd}, 0.86},        // Aldebaran
    Star{{{247.35192, -26.43200}, -12.1, -23.3, kEpochJ2000_jd}, 0.96},      // Antares
    Star{{{201.29825, -11.16132}, -42.4, -30.7, kEpochJ2000_jd}, 0.97},      // Spica
    Star{{{116.32896, 28.02620}, -626.5, -45.8, kEpochJ2000_jd}, 1.14},      // Pollux
    Star{{{344.41269, -29.62224}, 328.9, -164.7, kEpochJ2000_jd}, 1.16},     // Fomalhaut
    Star{{{310.35798, 45.28034}, 2.0, 1.9, kEpochJ2000_jd}, 1.25},           // Deneb
    Star{{{191.93029, -59.68877}, -43.0, -16.2, kEpochJ2000_jd}, 1.25},      // Mimosa
    Star{{{152.09296, 11.96721}, -248.7, 5.6, kEpochJ2000_jd}, 1.39},        // Regulus
    Star{{{187.79150, -57.11321}, 28.2, -265.1, kEpochJ2000_jd}, 1.64},      // Gacrux
};
constexpr auto kFirstStar = static_cast<std::size_t>(GuideBody::sirius);
static_assert(kStars.size() + kFirstStar == kGuideBodies);

struct Planet {
  void (*place)(double day, ln_equ_posn* place);
  double (*distance_au)(double day);
  double (*magnitude)(double day);
};

// In the order of GuideBody from Venus on.
constexpr std::array kPlanets{
    Planet{ln_get_venus_equ_coords, ln_get_venus_earth_dist, ln_get_venus_magnitude},
    Planet{ln_get_mars_equ_coords, ln_get_mars_earth_dist, ln_get_mars_magnitude},
    Planet{ln_get_jupiter_equ_coords, ln_get_jupiter_earth_dist, ln_get_jupiter_magnitude},
    Planet{ln_get_saturn_equ_coords, ln_get_saturn_earth_dist, ln_get_saturn_magnitude},
};
constexpr auto kFirstPlanet = static_cast<std::size_t>(GuideBody::venus);

struct Seen {
  Horizontal place;
  double magnitude;
};

// libnova's planets are at the equinox of J2000, with light time but without aberration.
Seen see_planet(const Planet& planet, Position position, UtcTime time) {
  const double day = terrestrial_julian_day(time);
  ln_equ_posn astrometric{};
  planet.place(day, &astrometric);
  ln_equ_posn aberrated{};
  ln_get_equ_aber(&astrometric, day, &aberrated);
  const Equatorial apparent = at_equinox_of(time, {aberrated.ra, aberrated.dec});
  return {seen_from(position, time, apparent, planet.distance_au(day)), planet.magnitude(day)};
}

// The angle at the sky between two directions.
double apart_deg(const Horizontal& one, double elevation_deg, Bearing<True> azimuth) {
  const double cosine = std::sin(one.elevation_deg * kRadian) * std::sin(elevation_deg * kRadian) +
                        std::cos(one.elevation_deg * kRadian) * std::cos(elevation_deg * kRadian) *
                            std::cos((one.azimuth - azimuth).clockwise_deg() * kRadian);
  return std::acos(std::clamp(cosine, -1.0, 1.0)) / kRadian;
}

// The moon is so near that the sun, as seen from it, stands where it stands for us, within 0.2
// degree.
Seen see_moon(Position position, UtcTime time, const SunPlace& sun) {
  constexpr double kLightTime_days = 1.28 / 86'400.0;
  constexpr double kSeriesCut_rad = 1e-7;  // drops terms that sum to 0.0001 degree
  constexpr double kKmPerAu = 149'597'870.7;
  ln_rect_posn moon_km{};  // ecliptic of J2000
  ln_get_lunar_geo_posn(terrestrial_julian_day(time) - kLightTime_days, &moon_km, kSeriesCut_rad);
  const double across_km = std::hypot(moon_km.X, moon_km.Y);
  const Equatorial j2000 = from_ecliptic_j2000(std::atan2(moon_km.Y, moon_km.X) / kRadian,
                                               std::atan2(moon_km.Z, across_km) / kRadian);
  const Horizontal place = seen_from(position, time, at_equinox_of(time, j2000),
                                     std::hypot(across_km, moon_km.Z) / kKmPerAu);
  const double phase_deg = 180.0 - apart_deg(place, sun.elevation_deg, sun.azimuth);
  return {place, -12.73 + 0.026 * phase_deg + 4e-9 * std::pow(phase_deg, 4.0)};
}

Seen see(GuideBody body, Position position, UtcTime time, const SunPlace& sun) {
  const auto index = static_cast<std::size_t>(body);
  if (body == GuideBody::moon) return see_moon(position, time, sun);
  if (body == GuideBody::polaris) {
    const PoleStar star = pole_star_at(position, time);
    return {{star.azimuth, star.altitude_deg}, kPolarisMagnitude};
  }
  if (index < kFirstPlanet + kPlanets.size()) {
    return see_planet(kPlanets[index - kFirstPlanet], position, time);
  }
  const Star& star = kStars[index - kFirstStar];
  return {seen_from(position, time, apparent_star(time, star.catalog), kInfinitelyFar_au),
          star.magnitude};
}

std::optional<NoGuide> why_no_guide(const Guide& guide, const SunPlace& sun) {
  constexpr double kDark_deg = -6.0;   // the end of civil twilight
  constexpr double kHalfMoon = -10.0;  // the magnitude of a quarter
  constexpr double kThinMoon = -6.5;   // two days from new
  constexpr double kLowestPolaris_deg = 5.0;
  const bool moon = guide.body == GuideBody::moon;
  const bool polaris = guide.body == GuideBody::polaris;
  if (guide.apparent_altitude_deg < (polaris ? kLowestPolaris_deg : kLowestGuide_deg)) {
    return NoGuide::TooLow;
  }
  if (moon && guide.magnitude > kThinMoon) return NoGuide::TooThin;
  if (sun.elevation_deg > kDark_deg && !(moon && guide.magnitude <= kHalfMoon)) {
    return NoGuide::Daylight;
  }
  if (!polaris && guide.apparent_altitude_deg > kHighestGuide_deg) return NoGuide::TooHigh;
  return std::nullopt;
}

double turn_deg_per_min(Position position, const Horizontal& place) {
  constexpr double kEarth_deg_per_min = 360.985647 / 1440.0;
  const double latitude = position.latitude_deg() * kRadian;
  return kEarth_deg_per_min *
         (std::sin(latitude) - std::cos(latitude) * std::tan(place.elevation_deg * kRadian) *
                                   std::cos(place.azimuth.degrees() * kRadian));
}

Guide guide_under(const SunPlace& sun, GuideBody body, Position position, UtcTime time) {
  const Seen seen = see(body, position, time, sun);
  const double altitude_deg = seen.place.elevation_deg;
  Guide guide{.body = body,
              .azimuth = seen.place.azimuth,
              .altitude_deg = altitude_deg,
              .apparent_altitude_deg = altitude_deg + refraction_deg(altitude_deg),
              .magnitude = seen.magnitude,
              .turn_deg_per_min = turn_deg_per_min(position, seen.place),
              .why_none = std::nullopt};
  guide.why_none = why_no_guide(guide, sun);
  return guide;
}

// Smaller is better.
double rank(const Guide& guide) {
  if (guide.body == GuideBody::moon) return -200.0;
  if (guide.body == GuideBody::polaris) return -100.0;
  constexpr double kMagnitudesPerDegree = 2.0 / 60.0;
  return guide.magnitude + kMagnitudesPerDegree * guide.apparent_altitude_deg;
}

}  // namespace

Guide guide_at(GuideBody body, Position position, UtcTime time) {
  return guide_under(sun_at(position, time), body, position, time);
}

std::vector<Guide> guides_now(Position position, UtcTime time) {
  const SunPlace sun = sun_at(position, time);
  std::vector<Guide> usable;
  for (int body = 0; body < kGuideBodies; ++body) {
    const Guide guide = guide_under(sun, static_cast<GuideBody>(body), position, time);
    if (!guide.why_none) usable.push_back(guide);
  }
  std::stable_sort(usable.begin(), usable.end(),
                   [](const Guide& a, const Guide& b) { return rank(a) < rank(b); });
  return usable;
}

}  // namespace mastwise::sky
