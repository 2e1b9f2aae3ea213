#include "core/landcover/cover_profile.hpp"

#include "core/landcover/globe_area.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace mastwise::landcover {
namespace {

using terrain::GlobeCell;
using terrain::TrackSegment;

constexpr int kSide = CoverTile::kSide;
constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

// Heights by the byte of a tile; NaN for bytes without a class.
using Heights = std::array<double, 256>;
const Heights& heights_by_byte() {
  static const Heights kHeights = [] {
    Heights heights{};
    for (std::size_t i = 0; i < heights.size(); ++i) {
      heights[i] = added_height_m(cover_class_of(static_cast<std::uint8_t>(i)));
    }
    return heights;
  }();
  return kHeights;
}

struct Range {
  double low;
  double high;
};

// The values of a cubic over [0, 1] lie between its Bezier control values.
Range range_of(const std::array<double, 4>& cubic) {
  const double second = cubic[0] + cubic[1] / 3.0;
  const double third = second + (cubic[1] + cubic[2]) / 3.0;
  const double last = cubic[0] + cubic[1] + cubic[2] + cubic[3];
  const auto [low, high] = std::minmax({cubic[0], second, third, last});
  return {low, high};
}

// Whether any cell that the segment may cross has a tile; true without a look where it may cross
// many.
bool may_have_cover(const CoverSource& cover, const TrackSegment& segment) {
  const Range north = range_of(segment.north_deg);
  const Range east = range_of(segment.east_deg);
  const GlobeCell first = GlobeArea::of({.north_deg = north.low, .east_deg = east.low}).cell();
  const GlobeCell last = GlobeArea::of({.north_deg = north.high, .east_deg = east.high}).cell();
  constexpr int kMany = 16;
  if ((last.north - first.north + 1) * (last.east - first.east + 1) > kMany) return true;
  for (int row = first.north; row <= last.north; ++row) {
    for (int column = first.east; column <= last.east; ++column) {
      if (cover.tile(GlobeCell{.north = row, .east = column}.tile_cell())) return true;
    }
  }
  return false;
}

// The areas of up to kBlock points in a row.
struct Block {
  static constexpr int kPoints = 64;
  std::array<int, kPoints> north;
  std::array<int, kPoints> east;

  // Reads the points `first` to `first` + `count` - 1 of a segment. Free of branches, so that the
  // compiler computes several at once.
  void locate(const TrackSegment& segment, int first, int count) {
    const double step = 1.0 / static_cast<double>(segment.intervals);
    const auto [n0, n1, n2, n3] = segment.north_deg;
    const auto [e0, e1, e2, e3] = segment.east_deg;
    for (int i = 0; i < count; ++i) {
      const double t = static_cast<double>(first + i) * step;
      north[static_cast<std::size_t>(i)] =
          static_cast<int>((((n3 * t + n2) * t + n1) * t + n0) * kSide);
      east[static_cast<std::size_t>(i)] =
          static_cast<int>((((e3 * t + e2) * t + e1) * t + e0) * kSide);
    }
  }
};

// Reads the points of a path from one end to the other and keeps the tile of the last one.
class Reader {
 public:
  explicit Reader(const CoverSource& cover) : cover_(cover) {}

  // Returns the number of points with a height.
  std::size_t read(const TrackSegment& segment, std::size_t points, double* heights_m);

 private:
  // The points from `start` of a block that are in the tile of the first; returns the one behind.
  int read_run(const Block& block, int start, int count, double* heights_m);

  const CoverSource& cover_;
  std::size_t known_ = 0;
  std::shared_ptr<const CoverTile> tile_;
  GlobeArea corner_{.north = -kSide, .east = -kSide};
};

std::size_t Reader::read(const TrackSegment& segment, std::size_t points, double* heights_m) {
  known_ = 0;
  Block block;
  const int all = static_cast<int>(points);
  for (int first = 0; first < all; first += Block::kPoints) {
    const int count = std::min(Block::kPoints, all - first);
    block.locate(segment, first, count);
    for (int start = 0; start < count;) {
      start = read_run(block, start, count, heights_m + first);
    }
  }
  return known_;
}

int Reader::read_run(const Block& block, int start, int count, double* heights_m) {
  const auto area = [&block](int i) {
    return GlobeArea{.north = block.north[static_cast<std::size_t>(i)],
                     .east = block.east[static_cast<std::size_t>(i)]};
  };
  const auto within = [](int distance) { return static_cast<unsigned>(distance) < kSide; };
  // The pole itself counts as part of the areas beside it.
  const GlobeArea first{.north = std::min(area(start).north, 180 * kSide - 1),
                        .east = area(start).east};
  if (!within(first.north - corner_.north) || !within(first.east - corner_.east)) {
    const GlobeCell cell = first.cell();
    tile_ = cover_.tile(cell.tile_cell());
    corner_ = {.north = cell.north * kSide, .east = cell.east * kSide};
  }
  const GlobeArea corner = corner_;
  int end = start + 1;
  if (!tile_) {
    while (end < count && within(area(end).north - corner.north) &&
           within(area(end).east - corner.east)) {
      ++end;
    }
    std::fill(heights_m + start, heights_m + end, kUnknown);
    return end;
  }
  const Heights& by_byte = heights_by_byte();
  const std::byte* const classes = tile_->classes();
  std::size_t known = 0;
  int up = first.north - corner.north;
  int right = first.east - corner.east;
  for (int i = start;;) {
    const auto byte = std::to_integer<std::uint8_t>(classes[CoverTile::place_of(up, right)]);
    heights_m[i] = by_byte[byte];
    known += cover_class_of(byte) != CoverClass::unknown ? 1 : 0;
    if (++i == count) {
      end = i;
      break;
    }
    up = area(i).north - corner.north;
    right = area(i).east - corner.east;
    if (!within(up) || !within(right)) {
      end = i;
      break;
    }
  }
  known_ += known;
  return end;
}

}  // namespace

std::size_t clutter_along(const CoverSource& cover, const terrain::PathProfile& profile,
                          std::vector<double>& heights_m) {
  const std::size_t all = profile.heights_m.size();
  heights_m.resize(all);
  Reader reader(cover);
  std::size_t known = 0;
  if (profile.segments.empty()) std::fill(heights_m.begin(), heights_m.end(), kUnknown);
  for (const TrackSegment& segment : profile.segments) {
    const bool last = &segment == &profile.segments.back();
    const std::size_t points = segment.intervals + (last ? 1 : 0);
    if (!may_have_cover(cover, segment)) {
      std::fill_n(heights_m.data() + segment.first_point, points, kUnknown);
      continue;
    }
    known += reader.read(segment, points, heights_m.data() + segment.first_point);
  }
  return known;
}

}  // namespace mastwise::landcover
