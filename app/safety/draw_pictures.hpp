#pragma once

#include "app/safety/state.hpp"
#include "app/ui/rig_side.hpp"
#include "app/ui/ui.hpp"
#include "core/safety/prompts.hpp"

namespace mastwise {

// What a prompt is about, drawn: the lines to keep away from, the ladder, the storm, the antenna
// down.
void draw_prompt_picture(ui::Ui& ui, ui::Rect area, safety::PromptPicture picture,
                         const SafetyState& state, bool miles);

// A rig in the colors of the screen.
ui::RigProfile rig_of(const ui::Theme& theme, double raised_m);

}  // namespace mastwise
