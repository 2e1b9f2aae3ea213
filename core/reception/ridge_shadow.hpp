#pragma once

#include "core/geo/position.hpp"
#include "core/map/projection.hpp"
#include "core/result.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstdint>
#include <vector>

namespace mastwise::reception {

// Where the waves start.
struct Tower {
  Position position;
  double antenna_amsl_m = 0.0;  // of the transmitting antenna
  double frequency_mhz = 0.0;   // over 0
};

// What the worst ridge on the way from a tower costs on the ground around a map's center: square
// cells, row by row from the north-west.
struct RidgeShadow {
  static constexpr std::uint8_t kUnknown = 0;
  // A ridge that costs as much is worth hatching: a tenth of the power gets past it [our choice].
  static constexpr double kRidge_db = 10.0;

  int side = 0;  // cells
  double meters_per_cell = 0.0;
  // kUnknown where the ground or the way is unknown, unless a known ridge costs kRidge_db already;
  // else 1 plus the loss in whole dB, at most 254.
  std::vector<std::uint8_t> cells = {};
  bool operator==(const RidgeShadow&) const = default;
};

// Sweeps the ground once around the tower, along lines no more than a cell apart at their ends. The
// loss of a cell is that of the worst single knife edge between the tower's antenna and one
// `rig_antenna_m` above the cell, over an earth of 4/3 radius (edge_loss_db); the edges are the
// profile points 90 m apart, none nearer to the cell than one spacing. Losses under 6 dB may be
// shown too small: only the ground that stands above the line of sight is searched.
//
// A cell takes the loss of the nearest line at its own distance, up to half a cell aside. Over real
// mountains, with cells of 250 m, 98 % of the cells are on the same side of kRidge_db as a separate
// profile to their middle, and 98 % within 3 dB of it (ridge_shadow_test.cpp).
//
// The smooth curve of the earth counts as a ridge too. Errors: 1 to 1024 cells of 10 to 10,000 m; a
// tower farther away than the map's plane reaches. Slow (up to half a second): run it in a worker.
// Source: Recommendation ITU-R P.526 section 4.1, (26) and (31).
Result<RidgeShadow> ridge_shadow(const terrain::TileSource& tiles,
                                 const map::Projection& projection, const Tower& tower,
                                 double rig_antenna_m, int side, double meters_per_cell);

}  // namespace mastwise::reception
