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

// The part of a map's plane that is to be shaded: its middle is the map's center, north is up.
struct ReliefGrid {
  int columns = 0, rows = 0;     // 1 to 2048 each
  double meters_per_cell = 0.0;  // 1 to 10,000
  bool operator==(const ReliefGrid&) const = default;
};

// Where the light comes from. The custom of maps is the north-west at half height: hills lit from
// below look like valleys.
struct Light {
  Bearing<True> from = Bearing<True>::degrees(315.0);
  double height_deg = 45.0;     // above the horizon, 0 to 90
  double vertical_scale = 1.0;  // heights count this many times, 0.001 to 1000
};

// Shaded ground, row by row from the north-west corner.
struct Relief {
  static constexpr std::uint8_t kUnknown = 0;

  ReliefGrid grid;
  // kUnknown where the height of the cell or of one of its eight neighbors is not known; else 1
  // (dark) to 255 (facing the light). Level ground is 1 + 254 sin(light's height).
  std::vector<std::uint8_t> shade;
  // kUnknown where the height is not known; else 1 and how many of kBandsFromM it reaches.
  std::vector<std::uint8_t> band;

  // Narrow steps where most people travel, wide ones in the mountains: own choice.
  static constexpr std::array kBandsFromM{50.0,   100.0,  200.0,  300.0,  500.0,  750.0,
                                          1000.0, 1500.0, 2000.0, 2500.0, 3000.0, 4000.0};
  bool operator==(const Relief&) const = default;
};

// Shades the ground around the projection's center. Heights are read at the middle of each cell,
// slope and aspect come from the eight neighbors by the third-order finite differences of B. K. P.
// Horn, Hill shading and the reflectance map, Proc. IEEE 69 (1981), with the brightness of a matt
// surface. The places of the cells are exact at every 16th and between those within a hundredth of
// a cell up to 2 km per cell. Poleward of 85 degrees nothing is known. Slow: for a worker. Errors:
// a grid or light beyond its bounds.
Result<Relief> shade_relief(const terrain::TileSource& tiles, const Projection& projection,
                            ReliefGrid grid, Light light = {});

}  // namespace mastwise::map
