#include "app/ui/layout.hpp"

namespace mastwise::ui {
namespace {

constexpr float kSlot = 96.0f, kSlotGap = 24.0f, kEdge = 8.0f;
constexpr float kEndHeight = 72.0f;

void lay_rail(Layout& layout, Rect screen) {
  const float top = screen.bottom - kRail;
  layout.rail = {screen.left, top, screen.right, screen.bottom};
  layout.rail_rule = {{screen.left, top}, {screen.right, top}};
  layout.rail_end = {screen.right - kSlot - kEdge, top + 20.0f, screen.right - kEdge,
                     top + 20.0f + kEndHeight};
  layout.take_back = {layout.rail_end.left - kSlotGap - kSlot, layout.rail_end.top,
                      layout.rail_end.left - kSlotGap, layout.rail_end.bottom};
  layout.body = {screen.left + kMargin, screen.top + kMargin, screen.right - kMargin, top - kFoot};
}

void stand_rail(Layout& layout, Rect screen, bool left_handed) {
  const float left = left_handed ? screen.right - kRail : screen.left;
  layout.rail = {left, screen.top, left + kRail, screen.bottom};
  const float rule = left_handed ? layout.rail.left : layout.rail.right;
  layout.rail_rule = {{rule, screen.top}, {rule, screen.bottom}};
  layout.rail_end = {left + kEdge, screen.bottom - 24.0f - kEndHeight, left + kRail - kEdge,
                     screen.bottom - 24.0f};
  layout.take_back = {left + kEdge, layout.rail_end.top - kSlotGap - kEndHeight,
                      left + kRail - kEdge, layout.rail_end.top - kSlotGap};
  layout.body = {(left_handed ? screen.left : layout.rail.right) + kMargin, screen.top + kMargin,
                 (left_handed ? layout.rail.left : screen.right) - kMargin, screen.bottom - kFoot};
}

}  // namespace

Layout layout(Rect screen, bool left_handed) {
  Layout result;
  result.rail_lies = screen.height() > screen.width();
  if (result.rail_lies) {
    lay_rail(result, screen);
  } else {
    stand_rail(result, screen, left_handed);
  }
  result.foot = {result.body.left, result.body.bottom, result.body.right,
                 result.body.bottom + kFoot};
  return result;
}

Rect Layout::rail_slot(std::size_t index) const {
  const float along = 24.0f + static_cast<float>(index) * (kSlot + kSlotGap);
  if (rail_lies) {
    return {rail.left + along, rail.top + kEdge, rail.left + along + kSlot, rail.bottom - kEdge};
  }
  return {rail.left + kEdge, rail.top + along, rail.right - kEdge, rail.top + along + kSlot};
}

}  // namespace mastwise::ui
