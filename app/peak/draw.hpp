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

// Which appliance of the rig makes the noise; covers the whole screen.
void draw_hunt_sheet(Ui& ui, const Shared& shared, const PeakState& peak);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const PeakState& peak) {
  switch (shared.sheet) {
    case Sheet::Meter:
      draw_meter_sheet(ui, shared, peak);
      return true;
    case Sheet::NoiseHunt:
      draw_hunt_sheet(ui, shared, peak);
      return true;
    default:
      return false;
  }
}

}  // namespace mastwise::screens
