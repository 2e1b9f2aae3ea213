#include "app/map/draw_labels.hpp"

#include "app/touch/segments.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::screens {
namespace {

using touch::line_meets;
using touch::Point;
using touch::Rect;

constexpr float kRoom = 3.0f;  // between words and anything else

// Whether a circle's line meets a rectangle.
bool ring_crosses(Point center, float radius, Rect rect) {
  const float to_left = rect.left - center.x, to_right = rect.right - center.x;
  const float to_top = rect.top - center.y, to_bottom = rect.bottom - center.y;
  const float near_x = std::max({0.0f, to_left, -to_right});
  const float near_y = std::max({0.0f, to_top, -to_bottom});
  const float far_x = std::max(std::fabs(to_left), std::fabs(to_right));
  const float far_y = std::max(std::fabs(to_top), std::fabs(to_bottom));
  return std::hypot(near_x, near_y) <= radius && radius <= std::hypot(far_x, far_y);
}

}  // namespace

bool LabelField::is_free(Rect plate, On on) const {
  const bool within =
      area_.contains({plate.left, plate.top}) && area_.contains({plate.right, plate.bottom});
  if (!within) return false;
  const Rect wide = plate.inset(-kRoom);
  const auto covers = [&](const Rect& block) { return block.overlaps(wide); };
  const auto meets = [&](const Segment& line) { return line_meets(line.from, line.to, wide); };
  const auto cuts = [&](const Ring& ring) {
    const bool allowed = on == On::Rings || (on == On::BreakingRings && ring.breaks);
    return !allowed && ring_crosses(ring.center, ring.radius, wide);
  };
  return std::none_of(blocks_.begin(), blocks_.end(), covers) &&
         std::none_of(lines_.begin(), lines_.end(), meets) &&
         std::none_of(rings_.begin(), rings_.end(), cuts);
}

bool LabelField::leader_is_free(Segment leader) const {
  const auto covers = [&](const Rect& block) { return line_meets(leader.from, leader.to, block); };
  const auto crosses = [&](const Segment& other) {
    return touch::lines_cross(leader.from, leader.to, other.from, other.to);
  };
  return std::none_of(blocks_.begin(), blocks_.end(), covers) &&
         std::none_of(leaders_.begin(), leaders_.end(), crosses);
}

std::optional<LabelField::Place> LabelField::room(Point mark, float radius, float away, Point size,
                                                  On on) const {
  constexpr float kDiagonal = 0.7071f, kFlat = 0.9239f, kSteep = 0.3827f;
  constexpr std::array kWays{Point{1.0f, 0.0f},
                             Point{-1.0f, 0.0f},
                             Point{kFlat, -kSteep},
                             Point{kFlat, kSteep},
                             Point{-kFlat, -kSteep},
                             Point{-kFlat, kSteep},
                             Point{kDiagonal, -kDiagonal},
                             Point{kDiagonal, kDiagonal},
                             Point{-kDiagonal, -kDiagonal},
                             Point{-kDiagonal, kDiagonal},
                             Point{0.0f, -1.0f},
                             Point{0.0f, 1.0f}};
  for (const Point way : kWays) {
    const Point end = mark + way * (radius + away);
    const bool beside = std::fabs(way.x) > 0.1f;
    const float left = !beside ? end.x - size.x / 2.0f : way.x > 0.0f ? end.x : end.x - size.x;
    const float top = beside ? end.y - size.y / 2.0f : way.y < 0.0f ? end.y - size.y : end.y;
    const Rect plate{left, top, left + size.x, top + size.y};
    if (!is_free(plate, on)) continue;
    // From the edge of its own mark's block, which it may leave.
    const float straight = std::max(std::fabs(way.x), std::fabs(way.y));
    const float past = std::min(radius / straight + 0.5f, radius + away);
    if (leader_is_free({mark + way * past, end})) return Place{plate, end};
  }
  return std::nullopt;
}

std::optional<LabelField::Place> LabelField::beside(Point mark, float radius, float width,
                                                    float height) {
  struct Try {
    float away;
    On on;
  };
  constexpr std::array kTries{Try{16.0f, On::Nothing},       Try{32.0f, On::Nothing},
                              Try{52.0f, On::Nothing},       Try{16.0f, On::BreakingRings},
                              Try{32.0f, On::BreakingRings}, Try{52.0f, On::BreakingRings},
                              Try{76.0f, On::BreakingRings}, Try{104.0f, On::BreakingRings},
                              Try{136.0f, On::BreakingRings}};
  for (const Try& attempt : kTries) {
    const auto found = room(mark, radius, attempt.away, {width, height}, attempt.on);
    if (!found) continue;
    block(found->plate);
    const Point edge =
        mark + (found->leader - mark) * (radius / touch::distance(mark, found->leader));
    block_line(edge, found->leader);
    leaders_.push_back({edge, found->leader});
    return found;
  }
  return std::nullopt;
}

}  // namespace mastwise::screens
