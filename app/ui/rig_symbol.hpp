#pragma once

#include "app/ui/canvas.hpp"
#include "core/angles/bearing.hpp"

#include <optional>

namespace mastwise::ui {

// The rig from above, its nose turned clockwise from the screen's top; a ring if the heading is
// unknown. At scale 1 it is 165 units long.
void draw_rig(Canvas& canvas, const Theme& theme, Point center, std::optional<Turn> nose,
              float scale = 1.0f);

}  // namespace mastwise::ui
