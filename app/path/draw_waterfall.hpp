#pragma once

#include "app/path/waterfall.hpp"
#include "app/ui/ui.hpp"

#include <span>

namespace mastwise::screens {

// The height of the picture with as many rows, and the most rows that a height has room for.
float waterfall_height(std::size_t rows);
std::size_t waterfall_rows(float height);

// Where the signal went: the steps from the tower's power down to the margin, which is the answer,
// with both models' margins on it. `rows` are the budget's. Returns the room that is left free
// beside the answer.
ui::Rect draw_waterfall(ui::Ui& ui, ui::Rect area, const reception::SignalBudget& budget,
                        std::span<const WaterfallRow> rows, bool miles);

}  // namespace mastwise::screens
