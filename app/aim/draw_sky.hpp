#pragma once

#include "app/ui/ui.hpp"
#include "core/headings/sayings.hpp"

namespace mastwise::screens {

// All the way around the horizon with the heading in the middle: where the bodies that guide stand,
// and how high. Returns the bottom.
float draw_sky(ui::Ui& ui, ui::Rect area, Bearing<True> heading, const FromStars& stars);

}  // namespace mastwise::screens
