#pragma once

#include "app/safety/state.hpp"
#include "app/ui/ui.hpp"

// The screens that cover all others for safety.
namespace mastwise {

using ui::Ui;

// The open prompt.
void draw_prompt(Ui& ui, const SafetyState& state, bool left_handed);

// While the rig moves.
void draw_drive_face(Ui& ui, const SafetyState& state, Monotonic now);

}  // namespace mastwise
