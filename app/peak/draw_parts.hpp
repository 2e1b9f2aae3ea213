#pragma once

#include "app/peak/draw.hpp"

#include <string>

// The parts of the place Peak.
namespace mastwise::screens {

// Before a sweep: three steps, drawn, and what to turn and to read by.
void draw_before_sweep(Ui& ui, Rect area, const Shared& shared, const PeakState& peak);

// Readings over headings with the antenna's pattern through them, or the two failing edges.
// A touch in it as high as the meter reads is a reading.
void draw_sweep_plot(Ui& ui, Rect area, const PeakState& peak);

// Where to turn next, the keys for the meter, and the acts of one reading.
struct ReadingPanel {
  Rect area;
  bool tall = true;  // room for two rows of keys
};
float reading_panel_height(bool tall);
void draw_reading_panel(Ui& ui, const ReadingPanel& panel, const Shared& shared,
                        const PeakState& peak);

// "magnetic" or "on the handle".
std::string dial_word(SweepBy by);
// "24° magnetic".
std::string on_dial(SweepBy by, Bearing<Dial> heading);

}  // namespace mastwise::screens
