#include "core/geo/utm_ups.hpp"

#include <GeographicLib/UTMUPS.hpp>
#include <fmt/format.h>

namespace mastwise {

UtmUps to_utm_ups(Position position) {
  UtmUps point{};
  double convergence_deg = 0.0;
  double scale = 0.0;
  GeographicLib::UTMUPS::Forward(position.latitude_deg(), position.longitude_deg(), point.zone,
                                 point.north, point.easting_m, point.northing_m, convergence_deg,
                                 scale);
  point.convergence = Convergence::east_deg(convergence_deg);
  return point;
}

bool south_looks_like_band(int zone, double easting_m, double northing_m) {
  constexpr double kToleranceDeg = 1e-4;
  // The band lies within these limits, as does GeographicLib's grid.
  constexpr double kBandSouthM = 3500e3;
  constexpr double kBandNorthM = 4500e3;
  if (northing_m < kBandSouthM || northing_m > kBandNorthM) return false;
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  GeographicLib::UTMUPS::Reverse(zone, true, easting_m, northing_m, latitude_deg, longitude_deg);
  return latitude_deg >= 32.0 - kToleranceDeg && latitude_deg <= 40.0 + kToleranceDeg;
}

std::string zone_name(int zone, bool north) {
  const char hemisphere = north ? 'N' : 'S';
  return zone == 0 ? fmt::format("UPS {}", hemisphere) : fmt::format("{}{}", zone, hemisphere);
}

}  // namespace mastwise
