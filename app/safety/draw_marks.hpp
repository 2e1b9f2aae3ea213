#pragma once

#include "app/ui/ui.hpp"
#include "core/safety/prompts.hpp"

namespace mastwise {

// The mark of a caution in a framed square.
void draw_caution_mark(ui::Ui& ui, ui::Rect square, safety::CautionMark mark);

}  // namespace mastwise
