#include "core/sky/apparent_place.hpp"

#include "core/angles/radian.hpp"

#include <cmath>

#include <libnova/aberration.h>
#include <libnova/nutation.h>
#include <libnova/precession.h>
#include <libnova/sidereal_time.h>

namespace mastwise::sky {
namespace {

struct Vector {
  double x, y, z;
};

Vector to_vector(Equatorial place) {
  const double right_ascension = place.right_ascension_deg * kRadian;
  const double declination = place.declination_deg * kRadian;
  return {std::cos(declination) * std::cos(right_ascension),
          std::cos(declination) * std::sin(right_ascension), std::sin(declination)};
}

Equatorial to_equatorial(Vector vector) {
  return {fold_circle_deg(std::atan2(vector.y, vector.x) / kRadian),
          std::atan2(vector.z, std::hypot(vector.x, vector.y)) / kRadian};
}

// The same direction in axes turned by `angle_deg` about the x axis, from y toward z.
Vector about_x(Vector vector, double angle_deg) {
  const double cosine = std::cos(angle_deg * kRadian);
  const double sine = std::sin(angle_deg * kRadian);
  return {vector.x, cosine * vector.y + sine * vector.z, cosine * vector.z - sine * vector.y};
}

// The same direction in axes turned by `angle_deg` about the z axis, from x toward y.
Vector about_z(Vector vector, double angle_deg) {
  const double cosine = std::cos(angle_deg * kRadian);
  const double sine = std::sin(angle_deg * kRadian);
  return {cosine * vector.x + sine * vector.y, cosine * vector.y - sine * vector.x, vector.z};
}

double julian_day(UtcTime time) {
  constexpr double kEpochOfUnix = 2440587.5;
  return kEpochOfUnix + static_cast<double>(time.time_since_epoch().count()) / 86'400'000.0;
}

// Nutation at the nearest noon, at most 0.00003 degree off. The result must not depend on earlier
// calls, but libnova repeats its last one for a tenth of a day, and adds a trace of it to the next.
// So the day before is always computed first. A search asks hundreds of times for the same noon.
ln_nutation nutation_at(UtcTime time) {
  struct Noon {
    double day = 0.0;
    ln_nutation nutation{};
  };
  thread_local Noon last;
  const double noon = std::round(terrestrial_julian_day(time));
  if (noon != last.day) {
    last.day = noon;
    ln_get_nutation(noon - 1.0, &last.nutation);
    ln_get_nutation(noon, &last.nutation);
  }
  return last.nutation;
}

// libnova's apparent sidereal time omits the cosine of the obliquity in its nutation.
double apparent_sidereal_deg(UtcTime time) {
  const ln_nutation nutation = nutation_at(time);
  return ln_get_mean_sidereal_time(julian_day(time)) * 15.0 +
         nutation.longitude * std::cos(nutation.ecliptic * kRadian);
}

// The observer relative to the earth's center, in astronomical units, x axis in their meridian.
Vector observer_au(Position position) {
  constexpr double kEquatorialRadius_au = 6378.137 / 149597870.7;
  constexpr double kFlattening = 1.0 / 298.257223563;
  const double latitude = position.latitude_deg() * kRadian;
  const double reduced = std::atan2((1.0 - kFlattening) * std::sin(latitude), std::cos(latitude));
  return {kEquatorialRadius_au * std::cos(reduced), 0.0,
          kEquatorialRadius_au * (1.0 - kFlattening) * std::sin(reduced)};
}

}  // namespace

double terrestrial_julian_day(UtcTime time) {
  return julian_day(time) + 69.184 / 86'400.0;
}

Equatorial from_ecliptic_j2000(double longitude_deg, double latitude_deg) {
  constexpr double kObliquity_deg = 23.4392911;
  return to_equatorial(about_x(to_vector({longitude_deg, latitude_deg}), -kObliquity_deg));
}

Equatorial apparent_star(UtcTime time, const CatalogStar& star) {
  const double day = terrestrial_julian_day(time);
  const double years = (day - star.epoch_jd) / 365.25;
  constexpr double kMas = 1.0 / 3.6e6;
  const double declination_deg = star.place.declination_deg;
  ln_equ_posn moved{star.place.right_ascension_deg +
                        years * star.motion_east_mas * kMas / std::cos(declination_deg * kRadian),
                    declination_deg + years * star.motion_north_mas * kMas};
  ln_equ_posn aberrated{};
  ln_get_equ_aber(&moved, day, &aberrated);
  return at_equinox_of(time, {aberrated.ra, aberrated.dec});
}

Equatorial at_equinox_of(UtcTime time, Equatorial j2000) {
  ln_equ_posn from{j2000.right_ascension_deg, j2000.declination_deg};
  ln_equ_posn mean{};
  ln_get_equ_prec(&from, terrestrial_julian_day(time), &mean);
  const ln_nutation nutation = nutation_at(time);
  const Vector ecliptic = about_x(to_vector({mean.ra, mean.dec}), nutation.ecliptic);
  const Vector nutated = about_z(ecliptic, -nutation.longitude);
  return to_equatorial(about_x(nutated, -(nutation.ecliptic + nutation.obliquity)));
}

Horizontal seen_from(Position position, UtcTime time, Equatorial apparent, double distance_au) {
  const Vector far = to_vector(apparent);
  // x in the meridian of the place, y east of it
  const Vector local = about_z(far, apparent_sidereal_deg(time) + position.longitude_deg());
  const Vector observer = observer_au(position);
  const Vector topocentric{local.x - observer.x / distance_au, local.y,
                           local.z - observer.z / distance_au};
  const double latitude = position.latitude_deg() * kRadian;
  const double north = topocentric.z * std::cos(latitude) - topocentric.x * std::sin(latitude);
  const double up = topocentric.z * std::sin(latitude) + topocentric.x * std::cos(latitude);
  const double east = topocentric.y;
  return {Bearing<True>::degrees(std::atan2(east, north) / kRadian),
          std::atan2(up, std::hypot(east, north)) / kRadian};
}

double refraction_deg(double elevation_deg) {
  constexpr double kSunriseElevation_deg = -0.8333;
  if (elevation_deg < kSunriseElevation_deg) return 0.0;
  const double argument_deg = elevation_deg + 10.3 / (elevation_deg + 5.11);
  return std::fmax(0.0, 1.02 / std::tan(argument_deg * kRadian) / 60.0);
}

}  // namespace mastwise::sky
