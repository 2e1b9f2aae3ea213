#pragma once

#include "app/look/chance_colors.hpp"
#include "app/ui/ui.hpp"
#include "core/reception/chance.hpp"

#include <optional>

namespace mastwise::ui {

// Five segments, filled up to the class: one for out of reach, five for steady.
void draw_chance_mark(Ui& ui, Rect rect, reception::ChanceWord word);

// The same five segments as a ring of 19 units around a point, for dials and maps; the middle of a
// wanted station is filled.
void draw_chance_ring(Canvas& canvas, const Theme& theme, Look look, Point middle,
                      std::optional<double> chance_percent, bool wanted = false);

}  // namespace mastwise::ui
