#pragma once

#include "app/ahead/draw_layout.hpp"
#include "app/ahead/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"
#include "app/words/ahead.hpp"

#include <string>

// The places as columns on one axis of distance, the networks as rows.
namespace mastwise::screens::ahead_page {

// A near town, else the position; "Here" for the stop.
std::string title_of(const Shared& shared, const AheadColumn& column);

// Whether there are more places than columns: then the buttons to the others take the corner that
// otherwise leads to the heights that are missing.
bool pages(ui::Rect area, const AheadState& ahead);

// Draws columns, axis and rows within the area.
void draw_way(ui::Ui& ui, ui::Rect area, const Shared& shared, const AheadState& ahead);

}  // namespace mastwise::screens::ahead_page
