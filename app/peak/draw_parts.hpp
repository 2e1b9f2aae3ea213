#pragma once

#include "app/peak/draw.hpp"

#include <optional>
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

// Instead of it while a sensor and a meter take the readings: what to do next, how fast the antenna
// may turn, and what the meter says.
void draw_live_panel(Ui& ui, Rect area, const Shared& shared, const PeakState& peak);

// The rig on its ring with the antenna where it points and where to turn it; either may be missing.
void draw_turn_dial(Ui& ui, Point center, float radius, const Shared& shared, const Sweep& sweep,
                    std::optional<Bearing<Dial>> from, std::optional<Bearing<Dial>> to);

// "SNR 21.4 dB", or why the meter says nothing.
std::string meter_words(const PeakState& peak, Monotonic now);

// "magnetic", "on the handle" or "true".
std::string dial_word(SweepBy by);
// "24° magnetic".
std::string on_dial(SweepBy by, Bearing<Dial> heading);

}  // namespace mastwise::screens
