#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/terrain/tile_source.hpp"
#include "core/terrain/track_segment.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::terrain {

enum class GapCause {
  kNoTile,  // no tile of that cell, or an unreadable one
  kVoid,    // the tile has no height there
};

// Consecutive points of a profile without terrain.
struct TerrainGap {
  std::size_t first_point = 0;
  std::size_t points = 0;
  GapCause cause = GapCause::kVoid;
  bool bridged = false;  // its heights are interpolated, see cut_profile
  bool operator==(const TerrainGap&) const = default;
};

// Heights of the ground along the WGS84 geodesic from one position to another, in meters above the
// geoid, without earth curvature: the propagation model applies it. A buffer: cut_profile can
// refill it without allocating after the longest path.
struct PathProfile {
  double distance_m = 0.0;
  double spacing_m = 0.0;          // between neighboring points; 0 if both ends are one place
  Bearing<True> bearing_at_start;  // from the first position toward the second
  Bearing<True> bearing_back;      // from the second position toward the first
  std::vector<double> heights_m;   // both ends included, at least 2; NaN in open gaps
  std::vector<TerrainGap> gaps;    // from the start to the end, bridged ones too
  // Where the points are, for other layers on the same path: point `first_point` + i of a segment
  // is at i / intervals of it; the last segment also has the end.
  std::vector<TrackSegment> segments;

  // Points with a height, read or bridged.
  std::size_t known_points() const;
  // Points whose height is interpolated across a gap.
  std::size_t bridged_points() const;
  // Whether every point has a height. Models require a complete profile.
  bool complete() const;
  // Length of path with unknown heights, counting half an interval on either side of each point; at
  // most distance_m.
  double without_terrain_m() const;
  // 1 - without_terrain_m / distance_m, within [0, 1].
  double coverage() const;
};

enum class ProfileDetail {
  kFinestTile,  // points 30 m apart if the path meets any tile of 1 arc second, else 90 m
  k90m,         // points 90 m apart for all tiles
};

// A gap of at most this many points between known ones is bridged by a straight line.
inline constexpr std::size_t kLongestBridgePoints = 5;

// Cuts a profile into `profile` and discards its old content. The points are equally spaced, with
// `ceil(distance / nominal spacing)` intervals. The nominal spacing is 90 m for tiles of 3 arc
// seconds and 30 m for tiles of 1 arc second. If the path meets both, the finer spacing applies to
// all of it: no detail is lost, and the coarser tile is interpolated. Heights are bilinear. A void
// or a missing tile never counts as sea level: gaps of up to kLongestBridgePoints between known
// points are bridged linearly and marked as bridged; all others (and gaps at an end) stay NaN. Any
// thread may call it with a separate `profile`.
void cut_profile(const TileSource& tiles, Position from, Position to, PathProfile& profile,
                 ProfileDetail detail = ProfileDetail::kFinestTile);

}  // namespace mastwise::terrain
