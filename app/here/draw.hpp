#pragma once

#include "app/here/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// A half of Here: what is known of the stop.
void draw_here(Ui& ui, Rect area, const Shared& shared);

// These cover the whole screen.
void draw_start_sheet(Ui& ui, const Shared& shared);
void draw_position_sheet(Ui& ui, const Shared& shared);
void draw_gear_sheet(Ui& ui, const Shared& shared);
void draw_surroundings_sheet(Ui& ui, const Shared& shared);
void draw_noise_sheet(Ui& ui, const Shared& shared);
void draw_towers_sheet(Ui& ui, const Shared& shared);
void draw_television_sheet(Ui& ui, const Shared& shared);
void draw_nose_sheet(Ui& ui, const Shared& shared);
void draw_sensor_sheet(Ui& ui, const Shared& shared);
void draw_paper_sheet(Ui& ui, const Shared& shared, const HereState& here);

// Draws the open sheet if it is of this feature; false if not.
inline bool draw_sheet(Ui& ui, const Shared& shared, const HereState& here) {
  switch (shared.sheet) {
    case Sheet::Start:
      draw_start_sheet(ui, shared);
      return true;
    case Sheet::Position:
      draw_position_sheet(ui, shared);
      return true;
    case Sheet::Gear:
      draw_gear_sheet(ui, shared);
      return true;
    case Sheet::Surroundings:
      draw_surroundings_sheet(ui, shared);
      return true;
    case Sheet::Noise:
      draw_noise_sheet(ui, shared);
      return true;
    case Sheet::Towers:
      draw_towers_sheet(ui, shared);
      return true;
    case Sheet::Television:
      draw_television_sheet(ui, shared);
      return true;
    case Sheet::Nose:
      draw_nose_sheet(ui, shared);
      return true;
    case Sheet::Sensor:
      draw_sensor_sheet(ui, shared);
      return true;
    case Sheet::Paper:
      draw_paper_sheet(ui, shared, here);
      return true;
    default:
      return false;
  }
}

}  // namespace mastwise::screens
