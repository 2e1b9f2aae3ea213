#include "core/geo/geodesic.hpp"

#include <GeographicLib/Geodesic.hpp>

namespace mastwise {

using GeographicLib::Geodesic;

PathBetween path_between(Position from, Position to) {
  double distance_m = 0.0;
  double azimuth_deg = 0.0;
  double azimuth_at_end_deg = 0.0;
  Geodesic::WGS84().Inverse(from.latitude_deg(), from.longitude_deg(), to.latitude_deg(),
                            to.longitude_deg(), distance_m, azimuth_deg, azimuth_at_end_deg);
  if (distance_m == 0.0) return PathBetween{};
  return PathBetween{.distance_m = distance_m,
                     .bearing = Bearing<True>::degrees(azimuth_deg),
                     .bearing_at_end = Bearing<True>::degrees(azimuth_at_end_deg)};
}

Position destination(Position from, Bearing<True> bearing, double distance_m) {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  Geodesic::WGS84().Direct(from.latitude_deg(), from.longitude_deg(), bearing.degrees(), distance_m,
                           latitude_deg, longitude_deg);
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

}  // namespace mastwise
