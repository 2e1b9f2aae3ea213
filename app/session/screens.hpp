#pragma once

#include "app/session/model.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// Draws the whole window: the current place beside the rail, or the sheet that covers it. Screens
// draw a const model and can only emit actions.
void draw_program(ui::Ui& ui, const Model& model);

}  // namespace mastwise::screens
