#pragma once

#include "app/shared/shared.hpp"
#include "app/stations/state.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// The search, what is listed, and the list by heading.
void draw_stations(Ui& ui, Rect area, const Shared& shared, const StationsState& list);

// The rows of stations that fit into the view.
void draw_station_rows(Ui& ui, Rect view, const Shared& shared, const StationsState& list);

void draw_carries_sheet(Ui& ui, const Shared& shared, const StationsState& list);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const StationsState& list) {
  if (shared.sheet != Sheet::Carries) return false;
  draw_carries_sheet(ui, shared, list);
  return true;
}

}  // namespace mastwise::screens
