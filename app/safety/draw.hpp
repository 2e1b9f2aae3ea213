#pragma once

#include "app/safety/actions.hpp"
#include "app/safety/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <optional>

// The screens that cover all others for safety.
namespace mastwise {

using ui::Ui;

// The open prompt.
void draw_prompt(Ui& ui, const Shared& shared, const SafetyState& state);

// While the rig moves, and after the alarm until somebody answers it.
void draw_drive_face(Ui& ui, const Shared& shared, const SafetyState& state,
                     const std::optional<NextStop>& next);

}  // namespace mastwise
