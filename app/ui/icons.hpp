#pragma once

#include "app/shared/navigation.hpp"
#include "app/ui/canvas.hpp"

namespace mastwise::ui {

// The mark of a place, about 44 units high, around `center`.
void draw_place_icon(Canvas& canvas, Place place, Point center, Color color);
void draw_sun(Canvas& canvas, Point center, Color color);
void draw_moon(Canvas& canvas, Point center, Color color);

}  // namespace mastwise::ui
