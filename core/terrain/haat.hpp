#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/terrain/tile_source.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace mastwise::terrain {

struct HaatRadial {
  Bearing<True> bearing;
  std::optional<double> average_ground_m;  // std::nullopt if any of its points has no terrain
};

struct Haat {
  std::array<HaatRadial, 8> radials;  // every 45 degrees from true north
  std::optional<double> haat_m;       // std::nullopt unless all radials are known
  std::size_t known_radials() const;
};

inline constexpr double kHaatFirst_m = 3'000.0;
inline constexpr double kHaatLast_m = 16'000.0;
inline constexpr double kHaatSpacing_m = 100.0;

// Height of an antenna above average terrain in meters: its height above mean sea level, in meters,
// minus the average of eight radials' average ground between 3 and 16 km, both included (47 CFR
// 73.313(d), for television 73.684(d); the wording with "at least 50 evenly spaced data points" is
// also in 47 CFR 1.959). Each radial has 131 points 100 m apart, along the geodesic. A radial that
// meets a void or a missing tile is unknown, and so is the result: an average over fewer radials
// would be a different quantity.
Haat height_above_average_terrain(const TileSource& tiles, Position antenna, double antenna_amsl_m);

// Only the result.
std::optional<double> haat_m(Position antenna, double antenna_amsl_m, const TileSource& tiles);

}  // namespace mastwise::terrain
