#include "core/geo/notation.hpp"
#include "core/geo/utm_ups.hpp"

#include <cmath>

#include <GeographicLib/MGRS.hpp>
#include <fmt/format.h>

namespace mastwise {
namespace {

// The value rounded to whole steps. The side comes from the rounded value, which avoids
// "-0.000000". The antimeridian is always 180 W, as in Position.
long long steps(double degrees, double steps_per_degree) {
  const long long value = std::llround(degrees * steps_per_degree);
  return value == std::llround(180.0 * steps_per_degree) ? -value : value;
}

char side(long long value, char positive, char negative) {
  return value < 0 ? negative : positive;
}

std::string decimal(double degrees) {
  constexpr double kStepsPerDegree = 1e6;
  return fmt::format("{:.6f}",
                     static_cast<double>(steps(degrees, kStepsPerDegree)) / kStepsPerDegree);
}

std::string degrees_minutes(double degrees, char positive, char negative) {
  constexpr long long kStepsPerMinute = 10000;
  const long long value = steps(degrees, 60.0 * kStepsPerMinute);
  const long long size = value < 0 ? -value : value;
  const long long minutes = size / kStepsPerMinute;
  return fmt::format("{}\u00B0{:02}.{:04}\u2032{}", minutes / 60, minutes % 60,
                     size % kStepsPerMinute, side(value, positive, negative));
}

std::string degrees_minutes_seconds(double degrees, char positive, char negative) {
  constexpr long long kStepsPerSecond = 10;
  const long long value = steps(degrees, 3600.0 * kStepsPerSecond);
  const long long size = value < 0 ? -value : value;
  const long long seconds = size / kStepsPerSecond;
  return fmt::format("{}\u00B0{:02}\u2032{:02}.{}\u2033{}", seconds / 3600, seconds / 60 % 60,
                     seconds % 60, size % kStepsPerSecond, side(value, positive, negative));
}

std::string utm_ups(Position position) {
  const UtmUps point = to_utm_ups(position);
  const double easting_m = std::round(point.easting_m);
  const double northing_m = std::round(point.northing_m);
  const bool by_word =
      point.zone > 0 && !point.north && south_looks_like_band(point.zone, easting_m, northing_m);
  const std::string zone =
      by_word ? fmt::format("{} south", point.zone) : zone_name(point.zone, point.north);
  return fmt::format("{} {:.0f} {:.0f}", zone, easting_m, northing_m);
}

std::string mgrs(Position position) {
  constexpr std::size_t kDigits = 5;
  const UtmUps point = to_utm_ups(position);
  std::string text;
  GeographicLib::MGRS::Forward(point.zone, point.north, point.easting_m, point.northing_m,
                               position.latitude_deg(), kDigits, text);
  const std::string_view written = text;
  const std::size_t square_end = written.size() - 2 * kDigits;
  return fmt::format("{} {} {}", written.substr(0, square_end), written.substr(square_end, kDigits),
                     written.substr(square_end + kDigits));
}

}  // namespace

std::string format_position(Position position, Notation notation) {
  const double latitude_deg = position.latitude_deg();
  const double longitude_deg = position.longitude_deg();
  switch (notation) {
    case Notation::DegreesMinutes:
      return degrees_minutes(latitude_deg, 'N', 'S') + " " +
             degrees_minutes(longitude_deg, 'E', 'W');
    case Notation::DegreesMinutesSeconds:
      return degrees_minutes_seconds(latitude_deg, 'N', 'S') + " " +
             degrees_minutes_seconds(longitude_deg, 'E', 'W');
    case Notation::UtmUps:
      return utm_ups(position);
    case Notation::Mgrs:
      return mgrs(position);
    case Notation::Decimal:
      break;
  }
  return decimal(latitude_deg) + ", " + decimal(longitude_deg);
}

}  // namespace mastwise
