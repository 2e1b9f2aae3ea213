#pragma once

#include "app/look/chance_colors.hpp"
#include "app/ui/ui.hpp"
#include "core/reception/chance.hpp"

namespace mastwise::ui {

// Five segments, filled up to the class: one for out of reach, five for steady.
void draw_chance_mark(Ui& ui, Rect rect, reception::ChanceWord word);

}  // namespace mastwise::ui
