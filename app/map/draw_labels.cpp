#include "app/map/draw_labels.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::screens {
namespace {

using touch::Point;
using touch::Rect;

constexpr float kRoom = 3.0f;  // between words and anything else

// Whether a line meets a rectangle [Liang and Barsky, A new concept and method for line clipping,
// ACM Transactions on Graphics 3 (1984), from memory].
bool line_meets(Point from, Point to, Rect rect) {
  const Point way = to - from;
  float enters = 0.0f, leaves = 1.0f;
  const auto clip = [&](float step, float room) {
    if (step == 0.0f) return room >= 0.0f;
    const float at = room / step;
    if (step < 0.0f) {
      enters = std::max(enters, at);
    } else {
      leaves = std::min(leaves, at);
    }
    return enters <= leaves;
  };
  return clip(-way.x, from.x - rect.left) && clip(way.x, rect.right - from.x) &&
         clip(-way.y, from.y - rect.top) && clip(way.y, rect.bottom - from.y);
}

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
  return std::none_of(blocks_.begin(), blocks_.end(),
                      [&](const Rect& block) { return line_meets(leader.from, leader.to, block); });
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
    // From the corner of its own mark's block, which it may leave.
    const float past = std::min(1.42f * radius + 1.0f, radius + away);
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
    block_line(mark + (found->leader - mark) * (radius / touch::distance(mark, found->leader)),
               found->leader);
    return found;
  }
  return std::nullopt;
}

}  // namespace mastwise::screens
