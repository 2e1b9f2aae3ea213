#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_path_sheet(Ui& ui, const Shared& shared);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared) {
  if (shared.sheet != Sheet::Path) return false;
  draw_path_sheet(ui, shared);
  return true;
}

}  // namespace mastwise::screens
