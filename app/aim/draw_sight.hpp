#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// How to turn the antenna along a line that is sighted from the ground, without parallax: drawn
// from above and in words, with the least distance of a mark. Returns the bottom.
float draw_sight(ui::Ui& ui, ui::Rect area, float y, const Shared& shared);

}  // namespace mastwise::screens
