#pragma once

#include "app/ui/ui.hpp"
#include "core/geo/position.hpp"
#include "core/geo/weak_field.hpp"

#include <array>

namespace mastwise::screens {

// The earth from above the person's hemisphere, with both zones of a weak field and the person.
void draw_globe(ui::Ui& ui, ui::Point center, float radius, const Position& here,
                const std::array<WeakField, 2>& weak);

}  // namespace mastwise::screens
