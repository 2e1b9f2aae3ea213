#pragma once

#include "app/look/theme.hpp"
#include "app/map/state.hpp"
#include "app/ui/bitmap.hpp"

namespace mastwise::ui {

// Shaded ground: paper by day, dark by night; higher bands are warmer. Unknown ground is bare
// paper.
Bitmap relief_bitmap(const map::Relief& relief, Look look);

// The chance over the cells of an area scan, translucent over the ground; unknown cells stay empty.
// At night it is fainter, so that a bright area does not dazzle.
Bitmap area_bitmap(const AreaSheet& sheet, Look look);

// The darkest and the lightest color of relief_bitmap() under text.
struct ReliefExtremes {
  Color darkest, lightest;
};
ReliefExtremes relief_extremes(Look look);

}  // namespace mastwise::ui
