#pragma once

#include "app/ui/canvas.hpp"
#include "core/angles/bearing.hpp"

#include <optional>

namespace mastwise::ui {

inline constexpr float kRigLength = 165.0f;  // at scale 1

// The rig from above, its nose turned clockwise from the screen's top; a ring if the heading is
// unknown.
void draw_rig(Canvas& canvas, const Theme& theme, Point center, std::optional<Turn> nose,
              float scale = 1.0f);

}  // namespace mastwise::ui
