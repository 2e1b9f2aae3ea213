#pragma once

#include "app/look/theme.hpp"
#include "app/model/map.hpp"
#include "app/ui/raster.hpp"

namespace mastwise::ui {

// Shaded ground: paper by day, dark by night; higher bands are warmer. Unknown ground is hatched.
Raster relief_raster(const map::Relief& relief, bool night);

// The chance over the cells of an area scan, so that the ground is seen through it; what is not
// known is left out. By night it is fainter: a bright field would blind.
Raster area_raster(const AreaSheet& sheet, bool night);

// The darkest and the lightest that relief_raster() puts under text.
struct ReliefExtremes {
  Color darkest, lightest;
};
ReliefExtremes relief_extremes(bool night);

}  // namespace mastwise::ui
