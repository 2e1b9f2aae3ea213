#pragma once

#include "app/ui/layout.hpp"
#include "app/ui/metrics.hpp"

#include <algorithm>
#include <optional>

namespace mastwise {

// The places of a prompt's two buttons and its text, in units.
struct PromptLayout {
  ui::Rect confirm, refuse, text;
};

// The buttons are in a row at the far end of the page from the finger that opened the prompt, with
// the confirm button in the far corner: at least 30 mm from the finger on every screen of 90 mm and
// more, so that a second tap cannot hit it. Without a finger they are at the bottom.
inline PromptLayout prompt_layout(ui::Rect page, std::optional<ui::Point> opened_at,
                                  bool left_handed) {
  constexpr float kHigh = 104.0f, kGap = 24.0f;
  constexpr float kWidest = 50.0f * ui::kUnitsPerMm;
  const ui::Point middle = page.center();
  const bool on_top = opened_at && opened_at->y > middle.y;
  const bool on_left = opened_at ? opened_at->x > middle.x : left_handed;
  const float top = on_top ? page.top : page.bottom - kHigh;
  const float width = std::min(kWidest, 0.5f * (page.width() - kGap));
  const ui::Rect left{page.left, top, page.left + width, top + kHigh};
  const ui::Rect right{page.right - width, top, page.right, top + kHigh};
  ui::Rect text = page;
  (on_top ? text.top : text.bottom) = on_top ? top + kHigh + kGap : top - kGap;
  return {.confirm = on_left ? left : right, .refuse = on_left ? right : left, .text = text};
}

}  // namespace mastwise
