#pragma once

#include "app/aim/aimed.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <optional>

namespace mastwise::screens {

// The roof's dial, nose up or north up while the nose is not known: the norths, the aiming
// tolerance outside, and the antenna's arrow with its doubt; without a sensor the arrow points to
// the target. Nothing on it is under 34 units.
void draw_roof_dial(ui::Ui& ui, ui::Rect area, const Shared& shared,
                    const std::optional<Aimed>& pointing);

// The aiming tolerance around the target and where the antenna points, enlarged, over a width.
void draw_tolerance_scale(ui::Ui& ui, ui::Rect area, const Aimed& pointing,
                          const std::optional<Slack>& slack);

// Which way to turn.
void draw_turn_arrow(ui::Ui& ui, ui::Rect area, bool right);

}  // namespace mastwise::screens
