#pragma once

#include "app/ui/canvas.hpp"

namespace mastwise::ui {

// The mark of a north: filled for true, hollow for magnetic. Turned clockwise from upright.
void kite(Canvas& canvas, Point middle, float half_height, Color color, bool filled,
          double turned_deg = 0.0);

}  // namespace mastwise::ui
