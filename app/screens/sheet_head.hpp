#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

// Draws a sheet's title and its Done button over the whole width; returns the room below.
ui::Rect draw_sheet_head(ui::Ui& ui, const std::string& title);

}  // namespace mastwise::screens
