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

std::string zone_name(int zone, bool north) {
  const char hemisphere = north ? 'N' : 'S';
  return zone == 0 ? fmt::format("UPS {}", hemisphere) : fmt::format("{}{}", zone, hemisphere);
}

}  // namespace mastwise
