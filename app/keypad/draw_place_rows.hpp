#pragma once

#include "app/keypad/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The places found for the typed name, one row each.
void draw_place_rows(ui::Ui& ui, ui::Rect view, const Shared& shared, const Keypad& keypad);

}  // namespace mastwise::screens
