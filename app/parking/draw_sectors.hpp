#pragma once

#include "app/parking/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

// The rig in the middle of its sectors, true north up: the sectors to keep clear with what comes
// from there, the widest free sector, the nose headings that keep neighbors out, and the neighbors.
void draw_sectors(ui::Ui& ui, ui::Rect room, const Shared& shared, const ParkingState& parking);

// The two ends of an arc as a compass shows them here, else as true bearings: "12° to 47°".
std::string arc_words(const Shared& shared, const HeadingArc& arc);

}  // namespace mastwise::screens
