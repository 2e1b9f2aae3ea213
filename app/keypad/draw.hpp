#pragma once

#include "app/keypad/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// The open keypad; returns the room for the stations found while one is searched.
std::optional<Rect> draw_keypad(Ui& ui, const Shared& shared, const Keypad& keypad);

}  // namespace mastwise::screens
