#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The answer beside the dial: the station, the way to point, the number, what would go wrong, and
// the chance with its dearest reason.
void draw_answer(ui::Ui& ui, ui::Rect area, const Shared& shared, const AimState& aim);

// The ways to point as a row of pictures; the present one is filled.
void draw_way_row(ui::Ui& ui, ui::Rect rect, const Shared& shared);

// Without a heading: what is missing, and the act that mends it.
void draw_no_heading(ui::Ui& ui, ui::Rect area, const Shared& shared);

}  // namespace mastwise::screens
