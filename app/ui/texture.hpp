#pragma once

#include "app/ui/canvas.hpp"

// How what is missing or unknown looks: hatched ground, dotted lines.
namespace mastwise::ui {

// Slanted lines over the rectangle, `apart` units from each other across.
void hatch(Canvas& canvas, Rect rect, Color color, float apart = 11.0f, float width = 2.0f);

void dotted(Canvas& canvas, Point from, Point to, Color color, float width);
// The outline of a place where something would be.
void dotted(Canvas& canvas, Rect rect, Color color, float width);

}  // namespace mastwise::ui
