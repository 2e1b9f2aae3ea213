#include "core/headings/aim_card.hpp"

#include "core/geo/geodesic.hpp"

namespace mastwise {

AimCard aim_card(Position from, Position to, UtcTime date, const MagneticModel& model,
                 std::optional<RigHeading> rig_heading) {
  const PathBetween path = path_between(from, to);
  const MagneticField field = model.at(from, date);
  const GridZone grid = grid_zone_at(from);
  const AimCard card{.distance_m = path.distance_m,
                     .bearing_true = {},
                     .bearing_magnetic = {},
                     .bearing_grid = {},
                     .field = field,
                     .grid = grid,
                     .rig_angle = std::nullopt};
  return turned_to(card, path.bearing, rig_heading);
}

AimCard turned_to(AimCard card, Bearing<True> heading, std::optional<RigHeading> rig_heading) {
  card.bearing_true = heading;
  card.bearing_magnetic = to_magnetic(heading, card.field.declination);
  card.bearing_grid = to_grid(heading, card.grid.convergence);
  card.rig_angle.reset();
  if (rig_heading) card.rig_angle = to_rig_angle(heading, *rig_heading);
  return card;
}

}  // namespace mastwise
