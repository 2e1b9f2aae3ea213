#pragma once

#include "core/reception/area_scan.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace mastwise::reception {

// A better place than the stop.
struct Spot {
  std::size_t cell = 0;
  double distance_m = 0.0;  // from the stop
  Bearing<True> bearing;    // from the stop
  double chance_percent = 0.0;
  double gain_percent = 0.0;  // percentage points over the stop's chance
};

// Which spots are worth showing.
struct SpotRules {
  std::size_t most = 5;
  double least_gain_percent = 5.0;  // percentage points
  double apart_m = 100.0;           // from each other
};

// The chance at the grid's middle: of the cell there, or the mean of the four cells that meet
// there; std::nullopt if any of them is unknown.
std::optional<double> chance_at_stop(const AreaGrid& grid, const ChanceMap& chances);

// Local maxima of the chance over the cells within the grid's radius of the stop, those first that
// gain most for their distance. A maximum is a connected region of cells with the same whole
// percentage that no known neighbor outside it exceeds; its spot is the cell nearest to the stop. A
// spot nearer than `apart_m` to an earlier one is left out. `here_percent` is the chance at the
// stop.
std::vector<Spot> best_spots(const AreaGrid& grid, const ChanceMap& chances, double here_percent,
                             const SpotRules& rules = {});

}  // namespace mastwise::reception
