#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// Draws the route to the places ahead with its networks, from the area's top; returns its bottom.
float draw_route(ui::Ui& ui, ui::Rect area, const Shared& shared, const AheadState& ahead);

}  // namespace mastwise::screens
