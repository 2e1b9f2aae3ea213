#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

// A sheet's title and the act that closes it, over the whole width; returns the room below.
ui::Rect draw_sheet_head(ui::Ui& ui, const std::string& title);

}  // namespace mastwise::screens
