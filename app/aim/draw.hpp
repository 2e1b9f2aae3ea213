#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_aim(Ui& ui, Rect area, const Shared& shared, const AimState& aim);

// These cover the whole screen.
void draw_roof(Ui& ui, const Shared& shared, const AimState& aim);
void draw_ways_sheet(Ui& ui, const Shared& shared, const AimState& aim);
void draw_handle_sheet(Ui& ui, const Shared& shared, const AimState& aim);
void draw_checks_sheet(Ui& ui, const Shared& shared, const AimState& aim);
void draw_needle_sheet(Ui& ui, const Shared& shared, const AimState& aim);
void draw_tablet_sheet(Ui& ui, const Shared& shared);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const AimState& aim) {
  switch (shared.sheet) {
    case Sheet::Ways:
      draw_ways_sheet(ui, shared, aim);
      return true;
    case Sheet::Handle:
      draw_handle_sheet(ui, shared, aim);
      return true;
    case Sheet::Checks:
      draw_checks_sheet(ui, shared, aim);
      return true;
    case Sheet::Needle:
      draw_needle_sheet(ui, shared, aim);
      return true;
    case Sheet::Tablet:
      draw_tablet_sheet(ui, shared);
      return true;
    default:
      return false;
  }
}

}  // namespace mastwise::screens
