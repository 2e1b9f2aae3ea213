#include "core/geo/position.hpp"

#include "core/angles/bearing.hpp"

#include <fmt/format.h>

namespace mastwise {

Result<Position> Position::at_deg(double latitude_deg, double longitude_deg) {
  if (!(latitude_deg >= -90.0 && latitude_deg <= 90.0)) {
    return Error{.what = fmt::format("latitude {} is not within 90 S to 90 N", latitude_deg),
                 .remedy = "give latitude first, then longitude"};
  }
  if (!(longitude_deg >= -360.0 && longitude_deg <= 360.0)) {
    return Error{.what = fmt::format("longitude {} is not within 180 W to 180 E", longitude_deg),
                 .remedy = "give latitude first, then longitude"};
  }
  return Position(latitude_deg, fold_circle_deg(longitude_deg + 180.0) - 180.0);
}

}  // namespace mastwise
