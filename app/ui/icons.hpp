#pragma once

#include "app/model/choices.hpp"
#include "app/ui/canvas.hpp"

namespace mastwise::ui {

// The mark of a place, about 44 units high, around `centre`.
void draw_place_icon(Canvas& canvas, Place place, Point centre, Colour colour);

}  // namespace mastwise::ui
