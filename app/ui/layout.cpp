#include "app/ui/layout.hpp"

#include "app/shared/navigation.hpp"

#include <algorithm>

namespace mastwise::ui {
namespace {

constexpr float kRail = 112.0f, kEdge = 8.0f;
constexpr float kLeastGap = 15.0f;   // 2 mm
constexpr float kLeastSlot = 67.5f;  // 9 mm

// Slots along the rail: the places, the switch of day and night, and Undo. If they would be too
// small, the last two share one. On a lying rail they touch, so that their words fit.
struct Slots {
  float size = 0.0f, gap = 0.0f;
  std::size_t count = 0;
};

Slots slots_along(float length, bool touching) {
  constexpr float kMostSlot = 96.0f;
  const float least_gap = touching ? 0.0f : kLeastGap, ends = touching ? 4.0f : 2.0f * kLeastGap;
  const float least = touching ? kMostSlot : kLeastSlot;
  for (std::size_t count = kPlaceCount + 2;; --count) {
    const auto of = static_cast<float>(count);
    const float room = length - ends - (of - 1.0f) * least_gap;
    if (room < of * least && count > kPlaceCount + 1) continue;
    const float size = std::min(touching ? 1.5f * kMostSlot : kMostSlot, room / of);
    const float gap = std::min(24.0f, (length - ends - of * size) / (of - 1.0f));
    return {size, gap, count};
  }
}

// From the far end of the rail: 0 is the last.
Rect slot_from_end(const Layout& layout, std::size_t index) {
  const Rect& rail = layout.rail;
  const Slots slots =
      slots_along(layout.rail_lies ? rail.width() : rail.height(), layout.rail_lies);
  const float along =
      (layout.rail_lies ? 2.0f : kLeastGap) + static_cast<float>(index) * (slots.size + slots.gap);
  if (layout.rail_lies) {
    // Apart from the places, which touch.
    return {rail.right - along - slots.size + kLeastGap, rail.top + kEdge, rail.right - along,
            rail.bottom - kEdge};
  }
  return {rail.left + kEdge, rail.bottom - along - slots.size, rail.right - kEdge,
          rail.bottom - along};
}

void lay_rail(Layout& layout, Rect screen) {
  const float top = screen.bottom - kRail;
  layout.rail = {screen.left, top, screen.right, screen.bottom};
  layout.rail_rule = {{screen.left, top}, {screen.right, top}};
  layout.body = {screen.left + kMargin, screen.top + kMargin, screen.right - kMargin, top - kFoot};
}

void stand_rail(Layout& layout, Rect screen, bool left_handed, float letters) {
  // Wider for larger words, as far as the places can do without.
  constexpr float kShare = 0.75f, kMost = 0.17f;
  const float wide = kRail * (1.0f + std::min(kMost, kShare * (letters - 1.0f)));
  const float left = left_handed ? screen.right - wide : screen.left;
  layout.rail = {left, screen.top, left + wide, screen.bottom};
  const float rule = left_handed ? layout.rail.left : layout.rail.right;
  layout.rail_rule = {{rule, screen.top}, {rule, screen.bottom}};
  layout.body = {(left_handed ? screen.left : layout.rail.right) + kMargin, screen.top + kMargin,
                 (left_handed ? layout.rail.left : screen.right) - kMargin, screen.bottom - kFoot};
}

}  // namespace

Layout layout(Rect screen, bool left_handed, float letters) {
  Layout result;
  result.rail_lies = screen.height() > screen.width();
  if (result.rail_lies) {
    lay_rail(result, screen);
  } else {
    stand_rail(result, screen, left_handed, letters);
  }
  const float length = result.rail_lies ? result.rail.width() : result.rail.height();
  const bool share = slots_along(length, result.rail_lies).count == kPlaceCount + 1;
  result.rail_end = slot_from_end(result, 0);
  result.take_back = share ? result.rail_end : slot_from_end(result, 1);
  result.foot = {result.body.left, result.body.bottom, result.body.right,
                 result.body.bottom + kFoot};
  return result;
}

Rect Layout::rail_slot(std::size_t index) const {
  const Slots slots = slots_along(rail_lies ? rail.width() : rail.height(), rail_lies);
  const float along =
      (rail_lies ? 2.0f : kLeastGap) + static_cast<float>(index) * (slots.size + slots.gap);
  if (rail_lies) {
    return {rail.left + along, rail.top + kEdge, rail.left + along + slots.size,
            rail.bottom - kEdge};
  }
  return {rail.left + 1.0f, rail.top + along, rail.right - 1.0f, rail.top + along + slots.size};
}

}  // namespace mastwise::ui
