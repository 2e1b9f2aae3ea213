#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// The stations as a map.
void draw_station_map(Ui& ui, Rect area, const Shared& shared, const MapState& map);

}  // namespace mastwise::screens
