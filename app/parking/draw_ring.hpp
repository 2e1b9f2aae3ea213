#pragma once

#include "app/parking/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The rig with its nose up (north up while that is unknown), the eight sides around it as painted,
// and outside them where the wanted stations lie: a solid band that must stay clear, hatched where
// something stands. Taps and wipes paint.
void draw_ring(ui::Ui& ui, ui::Rect room, const Shared& shared, const ParkingState& parking);

}  // namespace mastwise::screens
