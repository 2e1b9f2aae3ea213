#pragma once

#include "app/ui/ui.hpp"

namespace mastwise::screens {

// From above: a line that can be seen, upward, and the heading at its angle from there, over
// degrees. `turn`: from the line to the heading. Returns the free top below.
float draw_protractor(ui::Ui& ui, ui::Rect area, const char* line_name, Turn turn);

}  // namespace mastwise::screens
