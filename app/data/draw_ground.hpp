#pragma once

#include "app/data/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

// The parts of the Data page.
namespace mastwise::screens::import {

// The squares around the stop and the way, with a legend below; hatched ones are missing.
void draw_ground(ui::Ui& ui, ui::Rect area, const Shared& shared, const Intake& data);

// The sources on one axis of time, from `top` down within the area; returns the bottom.
float draw_sources(ui::Ui& ui, ui::Rect area, const Shared& shared, const Intake& data);

}  // namespace mastwise::screens::import
