#pragma once

#include "app/peak/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_peak(Ui& ui, Rect area, const Shared& shared, const PeakState& peak);

}  // namespace mastwise::screens
