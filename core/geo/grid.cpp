#include "core/geo/grid.hpp"

#include "core/geo/utm_ups.hpp"

namespace mastwise {

GridZone grid_zone_at(Position position) {
  const UtmUps point = to_utm_ups(position);
  return GridZone{.name = zone_name(point.zone, point.north), .convergence = point.convergence};
}

}  // namespace mastwise
