#pragma once

#include "app/safety/draw.hpp"

namespace mastwise {

// The drive-off alarm over the whole screen.
void draw_alarm(Ui& ui, const Shared& shared, const SafetyState& state);

}  // namespace mastwise
