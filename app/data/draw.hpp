#pragma once

#include "app/data/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_import_sheet(Ui& ui, const Shared& shared, const Intake& data);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const Intake& data) {
  if (shared.sheet != Sheet::Import) return false;
  draw_import_sheet(ui, shared, data);
  return true;
}

}  // namespace mastwise::screens
