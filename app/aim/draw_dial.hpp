#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The null that could lie on what disturbs the target; nullptr without one.
const NullHint* null_here(const Shared& shared);

// The dial of the heading in use, as large as the area lets it be: the rig, the antenna's pattern
// in the target's band, the aiming tolerance, the other stations of the list. Labels keep clear of
// the acts in the lower corners.
void draw_aim_dial(ui::Ui& ui, ui::Rect area, float acts_height, const Shared& shared,
                   const AimState& aim);

}  // namespace mastwise::screens
