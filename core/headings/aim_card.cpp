#include "core/headings/aim_card.hpp"

#include "core/geo/geodesic.hpp"

namespace mastwise {

AimCard aim_card(Position from, Position to, UtcTime date, const MagneticModel& model,
                 std::optional<RigHeading> rig_heading) {
  const PathBetween path = path_between(from, to);
  const MagneticField field = model.at(from, date);
  const GridZone grid = grid_zone_at(from);
  AimCard card{.distance_m = path.distance_m,
               .bearing_true = path.bearing,
               .bearing_magnetic = to_magnetic(path.bearing, field.declination),
               .bearing_grid = to_grid(path.bearing, grid.convergence),
               .field = field,
               .grid = grid,
               .rig_angle = std::nullopt};
  if (rig_heading) card.rig_angle = to_rig_angle(path.bearing, *rig_heading);
  return card;
}

}  // namespace mastwise
