#pragma once

#include "app/logbook/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

// The parts of the Logbook's pages.
namespace mastwise::screens::log {

// A disc, full for a steady picture, half for one that breaks up, empty for nothing.
void draw_outcome(ui::Canvas& canvas, ui::Point center, float radius, Outcome outcome,
                  ui::Color color);
// The outcomes of a night, to the left of `right`; where they do not fit, how many were steady.
// Returns their left edge.
float draw_outcomes(ui::Ui& ui, ui::Point right, float room, const std::vector<Outcome>& outcomes);

// The list of what can come in, with what was seen.
void draw_tried(ui::Ui& ui, ui::Rect view, const Shared& shared, const LogbookState& logbook);

// The nights here before and the heading that worked; returns the bottom.
float draw_nights(ui::Ui& ui, ui::Rect area, const Shared& shared, const LogbookState& logbook);

// What the record teaches: a sentence and the plot of what came in against the forecast.
void draw_lesson(ui::Ui& ui, ui::Rect area, const LogbookState& logbook);

}  // namespace mastwise::screens::log
