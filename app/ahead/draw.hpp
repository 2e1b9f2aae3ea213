#pragma once

#include "app/ahead/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_ahead(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead);

}  // namespace mastwise::screens
