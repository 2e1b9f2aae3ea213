#pragma once

#include "app/parking/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// A half of Here: which way to park.
void draw_park(Ui& ui, Rect area, const Shared& shared, const ParkingState& parking);

// These cover the whole screen.
void draw_parking_sheet(Ui& ui, const Shared& shared, const ParkingState& parking);
void draw_antennas_sheet(Ui& ui, const Shared& shared);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const ParkingState& parking) {
  switch (shared.sheet) {
    case Sheet::Parking:
      draw_parking_sheet(ui, shared, parking);
      return true;
    case Sheet::Antennas:
      draw_antennas_sheet(ui, shared);
      return true;
    default:
      return false;
  }
}

}  // namespace mastwise::screens
