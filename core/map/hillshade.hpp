#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/map/projection.hpp"
#include "core/result.hpp"
#include "core/terrain/tile_source.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace mastwise::map {

// The part of a map's plane to shade: its middle is the map's center, north is up.
struct ReliefGrid {
  int columns = 0, rows = 0;     // 1 to 2048 each
  double meters_per_cell = 0.0;  // 1 to 10,000
  bool operator==(const ReliefGrid&) const = default;
};

// The direction of the light. Maps customarily use the north-west at half height: hills lit from
// below look like valleys.
struct Light {
  Bearing<True> from = Bearing<True>::degrees(315.0);
  double height_deg = 45.0;     // above the horizon, 0 to 90
  double vertical_scale = 1.0;  // factor on the heights, 0.001 to 1000
};

// Shaded ground, row by row from the north-west corner.
struct Relief {
  static constexpr std::uint8_t kUnknown = 0;

  ReliefGrid grid;
  // kUnknown if the height of the cell or of one of its eight neighbors is unknown; else 1 (dark)
  // to 255 (facing the light). Level ground is 1 + 254 sin(light's height).
  std::vector<std::uint8_t> shade;
  // kUnknown if the height is unknown; else 1 plus the number of kBandsFromM it reaches.
  std::vector<std::uint8_t> band;

  // Narrow steps at the heights of most travel, wide ones in the mountains: a free choice.
  static constexpr std::array kBandsFromM{50.0,   100.0,  200.0,  300.0,  500.0,  750.0,
                                          1000.0, 1500.0, 2000.0, 2500.0, 3000.0, 4000.0};
  bool operator==(const Relief&) const = default;
};

// Shades the ground around the projection's center. Heights are read at the middle of each cell.
// Slope and aspect come from the eight neighbors by the third-order finite differences of B. K. P.
// Horn, Hill shading and the reflectance map, Proc. IEEE 69 (1981), with the brightness of a matt
// surface. Cell positions are exact at every 16th, and within a hundredth of a cell between those,
// up to 2 km per cell. Poleward of 85 degrees everything is unknown. Slow: run it in a worker.
// Errors: a grid or light out of range.
Result<Relief> shade_relief(const terrain::TileSource& tiles, const Projection& projection,
                            ReliefGrid grid, Light light = {});

}  // namespace mastwise::map
