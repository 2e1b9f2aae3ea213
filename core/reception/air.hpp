#pragma once

#include "core/geo/position.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"

namespace mastwise::reception {

// The air over a path, as input of both models.
struct Air {
  itm::Climate climate = itm::Climate::continental_temperate;
  double surface_n = 301.0;               // refractivity, N-units
  p1812::Refractivity refractivity = {};  // P.1812's DN and N0
};

// The radio climate of a place: a table of boxes by latitude and longitude for deserts and
// maritime coasts, else by latitude [own choice after the examples that TR 82-100 names for each
// climate: Congo, Sudan, West Africa, Sahara, continental Europe and America, western coasts].
itm::Climate climate_at(Position position);

// The usual air of a climate. The surface refractivity is the one TR 82-100, table 1, suggests for
// it (from memory), and counts as N0. The fall over the first kilometer follows from it by the
// exponential reference atmosphere, DN = 7.32 exp(0.005577 N) [Bean and Thayer 1959]; in the
// continental temperate climate that is the 4/3 earth.
Air air_of(itm::Climate climate);

}  // namespace mastwise::reception
