#pragma once

#include "app/shared/navigation.hpp"
#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::ui {

// Draws a sheet's title and its Done button over the whole width; returns the room below. Done
// leads to `back`: the sheet that this one was opened from, or the places. A guide has its mark
// beside it.
Rect draw_sheet_head(Ui& ui, const std::string& title, Sheet back = Sheet::None,
                     Guide guide = Guide::None);

}  // namespace mastwise::ui
