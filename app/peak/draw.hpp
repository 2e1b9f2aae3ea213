#pragma once

#include "app/peak/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_peak(Ui& ui, Rect area, const Shared& shared, const PeakState& peak);

// Where the meter's readings come from; covers the whole screen.
void draw_meter_sheet(Ui& ui, const Shared& shared, const PeakState& peak);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const PeakState& peak) {
  if (shared.sheet != Sheet::Meter) return false;
  draw_meter_sheet(ui, shared, peak);
  return true;
}

}  // namespace mastwise::screens
