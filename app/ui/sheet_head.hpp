#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::ui {

// Draws a sheet's title and its Done button over the whole width; returns the room below.
Rect draw_sheet_head(Ui& ui, const std::string& title);

}  // namespace mastwise::ui
