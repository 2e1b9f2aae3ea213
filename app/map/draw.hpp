#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// The map around the stop, from edge to edge of the window beside the rail.
void draw_station_map(Ui& ui, Rect area, const Shared& shared, const MapState& map);

}  // namespace mastwise::screens
