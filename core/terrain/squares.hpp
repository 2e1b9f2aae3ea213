#pragma once

#include "core/geo/position.hpp"
#include "core/terrain/tile.hpp"

#include <span>
#include <vector>

namespace mastwise::terrain {

// A one-degree square with ground near a way.
struct NearSquare {
  TileCell cell;
  double near_km2 = 0.0;  // of its area, what lies within the reach; above 0
  bool operator==(const NearSquare&) const = default;
};

// The squares with ground within `reach_m` (above 0, at most 1,000,000 m) of the way through these
// positions, in the order of their cells; empty without a position. Distances are geodesics on the
// WGS84 ellipsoid, from 100 places of each square to places of the way at most an eighth of the
// reach apart: the reach is at most 0.2 % too short. Areas are those of a sphere of 6,371 km.
std::vector<NearSquare> squares_near(std::span<const Position> way, double reach_m);

}  // namespace mastwise::terrain
