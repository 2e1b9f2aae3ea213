#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The one page of settings; false if another sheet is open.
bool draw_settings_sheet(ui::Ui& ui, const Shared& shared);

}  // namespace mastwise::screens
