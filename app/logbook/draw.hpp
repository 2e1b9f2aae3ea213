#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

void draw_logbook(Ui& ui, Rect area, const Shared& shared, const LogbookState& logbook);
void draw_logbook_files_sheet(Ui& ui, const Shared& shared, const LogbookState& logbook);
void draw_stops_sheet(Ui& ui, const Shared& shared, const LogbookState& logbook);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const LogbookState& logbook) {
  if (shared.sheet == Sheet::Stops) {
    draw_stops_sheet(ui, shared, logbook);
  } else if (shared.sheet == Sheet::LogbookFiles) {
    draw_logbook_files_sheet(ui, shared, logbook);
  } else {
    return false;
  }
  return true;
}

}  // namespace mastwise::screens
