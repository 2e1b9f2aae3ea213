#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/grid.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <optional>

namespace mastwise {

// One heading, expressed in every way.
struct AimCard {
  double distance_m;
  Bearing<True> bearing_true;
  Bearing<Magnetic> bearing_magnetic;
  Bearing<Grid> bearing_grid;
  MagneticField field;                // at `from`: declination with its sigma, zone, warning
  GridZone grid;                      // at `from`: zone name and convergence
  std::optional<RigAngle> rig_angle;  // only if the rig's heading is known
  bool operator==(const AimCard&) const = default;
};

// The heading from `from` to `to` on `date`. The field is computed on the ellipsoid (10 km of
// height change the declination by hundredths of a degree). `from` and `to` must differ: see
// path_between. Sources: those of path_between, MagneticModel and grid_zone_at.
AimCard aim_card(Position from, Position to, UtcTime date, const MagneticModel& model,
                 std::optional<RigHeading> rig_heading);

// The same card for an antenna that is not turned straight at `to` but to this heading.
AimCard turned_to(AimCard card, Bearing<True> heading, std::optional<RigHeading> rig_heading);

}  // namespace mastwise
