#pragma once

#include "app/ui/canvas.hpp"

namespace mastwise::ui {

// The antenna's arrow: thick, with a head at `tip`.
void draw_arrow(Canvas& canvas, Point from, Point tip, Color color, float width);

}  // namespace mastwise::ui
