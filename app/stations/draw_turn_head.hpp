#pragma once

#include "app/shared/shared.hpp"
#include "app/stations/state.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

constexpr float kTurnHead = 256.0f;  // its width beside the rows

// What one heading brings: the rig with the antenna's arrow, the compass number and how many
// networks; a touch aims there. For a group without a heading: that each has its own.
void draw_turn_head(ui::Ui& ui, ui::Rect rect, const ListGroup& group, const Shared& shared);

}  // namespace mastwise::screens
