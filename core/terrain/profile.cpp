#include "core/terrain/profile.hpp"

#include "core/terrain/geodesic_track.hpp"
#include "core/terrain/globe_point.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>

namespace mastwise::terrain {
namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

double nominal_spacing_m(int side) {
  return side == Tile::kSide1ArcSecond ? 30.0 : 90.0;
}

void note_gap(PathProfile& profile, std::size_t point, GapCause cause) {
  profile.heights_m[point] = kUnknown;
  auto& gaps = profile.gaps;
  if (!gaps.empty() && gaps.back().cause == cause &&
      gaps.back().first_point + gaps.back().points == point) {
    ++gaps.back().points;
    return;
  }
  gaps.push_back({.first_point = point, .points = 1, .cause = cause});
}

// Fills a profile from one end to the other and keeps the tile of the last point.
class Filler {
 public:
  Filler(const TileSource& tiles, PathProfile& profile) : tiles_(tiles), profile_(profile) {}

  // Reads all points at the spacing for `side`. If requested, returns false as soon as it meets a
  // finer tile: then fill the profile again at the finer spacing.
  bool fill(GeodesicTrack& track, int side, bool stop_at_finer);

 private:
  static constexpr std::size_t kBlock = 64;

  bool fill_block(const TrackSegment& segment, std::size_t first, std::size_t count);
  void fill_run(std::size_t first, std::size_t count, std::size_t profile_point);

  const TileSource& tiles_;
  PathProfile& profile_;
  int finest_side_allowed_ = Tile::kSide1ArcSecond;
  bool tile_sought_ = false;
  GlobeCell cell_;
  std::shared_ptr<const Tile> tile_;
  std::array<double, kBlock> north_deg_;
  std::array<double, kBlock> east_deg_;
  std::array<GlobeCell, kBlock> cells_;
};

bool Filler::fill(GeodesicTrack& track, int side, bool stop_at_finer) {
  const double spacing_m = nominal_spacing_m(side);
  const auto intervals =
      static_cast<std::size_t>(std::max(1.0, std::ceil(track.distance_m() / spacing_m)));
  finest_side_allowed_ = stop_at_finer ? side : Tile::kSide1ArcSecond;
  profile_.spacing_m = track.distance_m() / static_cast<double>(intervals);
  profile_.heights_m.resize(intervals + 1);
  profile_.gaps.clear();
  profile_.segments.clear();
  track.cut(intervals);
  for (TrackSegment segment; track.next(segment);) {
    profile_.segments.push_back(segment);
    const bool last = segment.first_point + segment.intervals == intervals;
    const std::size_t points = segment.intervals + (last ? 1 : 0);
    for (std::size_t first = 0; first < points; first += kBlock) {
      if (!fill_block(segment, first, std::min(kBlock, points - first))) return false;
    }
  }
  return true;
}

bool Filler::fill_block(const TrackSegment& segment, std::size_t first, std::size_t count) {
  const double step = 1.0 / static_cast<double>(segment.intervals);
  for (std::size_t i = 0; i < count; ++i) {
    const GlobePoint point = segment.at(static_cast<double>(first + i) * step);
    north_deg_[i] = point.north_deg;
    east_deg_[i] = point.east_deg;
    cells_[i] = GlobeCell::of(point);
  }
  for (std::size_t start = 0, end = 0; start < count; start = end) {
    for (end = start + 1; end < count && cells_[end] == cells_[start];) ++end;
    if (!tile_sought_ || !(cells_[start] == cell_)) {
      cell_ = cells_[start];
      tile_ = tiles_.tile(cell_.tile_cell());
      tile_sought_ = true;
    }
    if (tile_ && tile_->side() > finest_side_allowed_) return false;
    fill_run(start, end - start, segment.first_point + first + start);
  }
  return true;
}

void Filler::fill_run(std::size_t first, std::size_t count, std::size_t profile_point) {
  double* const heights_m = profile_.heights_m.data() + profile_point;
  bool all_known = tile_ != nullptr;
  if (tile_) {
    const Tile tile = *tile_;
    for (std::size_t i = 0; i < count; ++i) {
      heights_m[i] = height_in_m(
          tile, cell_, {.north_deg = north_deg_[first + i], .east_deg = east_deg_[first + i]});
      all_known &= !std::isnan(heights_m[i]);
    }
  }
  if (all_known) return;
  for (std::size_t i = 0; i < count; ++i) {
    if (tile_ && !std::isnan(heights_m[i])) continue;
    const auto by_an_edge = ground_height_m(
        tiles_, GlobePoint{.north_deg = north_deg_[first + i], .east_deg = east_deg_[first + i]});
    if (by_an_edge) {
      heights_m[i] = *by_an_edge;
    } else {
      note_gap(profile_, profile_point + i, tile_ ? GapCause::kVoid : GapCause::kNoTile);
    }
  }
}

// Adjacent gaps with different causes are bridged or left open together.
void bridge_short_gaps(PathProfile& profile) {
  auto& gaps = profile.gaps;
  auto& heights_m = profile.heights_m;
  for (std::size_t start = 0, end = 0; start < gaps.size(); start = end) {
    const std::size_t first = gaps[start].first_point;
    std::size_t behind = first;
    for (end = start; end < gaps.size() && gaps[end].first_point == behind; ++end) {
      behind += gaps[end].points;
    }
    if (first == 0 || behind == heights_m.size() || behind - first > kLongestBridgePoints) continue;
    const double from_m = heights_m[first - 1];
    const double rise_m = heights_m[behind] - from_m;
    const double intervals = static_cast<double>(behind - first + 1);
    for (std::size_t point = first; point < behind; ++point) {
      heights_m[point] = from_m + rise_m * static_cast<double>(point - first + 1) / intervals;
    }
    for (std::size_t gap = start; gap < end; ++gap) gaps[gap].bridged = true;
  }
}

std::size_t points_in(const std::vector<TerrainGap>& gaps, bool bridged) {
  std::size_t points = 0;
  for (const TerrainGap& gap : gaps) points += gap.bridged == bridged ? gap.points : 0;
  return points;
}

}  // namespace

std::size_t PathProfile::known_points() const {
  return heights_m.size() - points_in(gaps, false);
}

std::size_t PathProfile::bridged_points() const {
  return points_in(gaps, true);
}

bool PathProfile::complete() const {
  return !heights_m.empty() && known_points() == heights_m.size();
}

double PathProfile::without_terrain_m() const {
  double intervals = 0.0;
  for (const TerrainGap& gap : gaps) {
    if (gap.bridged) continue;
    intervals += static_cast<double>(gap.points);
    if (gap.first_point == 0) intervals -= 0.5;
    if (gap.first_point + gap.points == heights_m.size()) intervals -= 0.5;
  }
  return intervals * spacing_m;
}

double PathProfile::coverage() const {
  if (distance_m > 0.0) return std::max(0.0, 1.0 - without_terrain_m() / distance_m);
  return complete() ? 1.0 : 0.0;
}

void cut_profile(const TileSource& tiles, Position from, Position to, PathProfile& profile,
                 ProfileDetail detail) {
  GeodesicTrack track(from, to);
  profile.distance_m = track.distance_m();
  profile.bearing_at_start = track.bearing_at_start();
  profile.bearing_back = track.bearing_back();
  Filler filler(tiles, profile);
  const bool finest = detail == ProfileDetail::kFinestTile;
  if (!filler.fill(track, Tile::kSide3ArcSeconds, finest)) {
    filler.fill(track, Tile::kSide1ArcSecond, false);
  }
  bridge_short_gaps(profile);
}

}  // namespace mastwise::terrain
