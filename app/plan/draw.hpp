#pragma once

#include "app/plan/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_plan_sheet(Ui& ui, const Shared& shared, const PlanState& plan);
void draw_scan_sheet(Ui& ui, const Shared& shared, const PlanState& plan);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const PlanState& plan) {
  switch (shared.sheet) {
    case Sheet::Plan:
      draw_plan_sheet(ui, shared, plan);
      return true;
    case Sheet::Scan:
      draw_scan_sheet(ui, shared, plan);
      return true;
    default:
      return false;
  }
}

}  // namespace mastwise::screens
