#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// Draws the map within an area: ground, coasts and borders, rings of equal distance, the beam, the
// stations by chance, the rig; or where around the stop a station comes in best.
void draw_map(ui::Ui& ui, ui::Rect area, const Shared& shared, const MapState& map);

}  // namespace mastwise::screens
