#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The page of the open guide: four pictures, each with its sentence.
void draw_guide(ui::Ui& ui, const Shared& shared);

}  // namespace mastwise::screens
