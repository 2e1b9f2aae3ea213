#pragma once

#include "app/shared/navigation.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::ui {

// The mark that opens a guide: a question mark on a disc. `face` fits the disc: Text 16,
// Cardinal 23.
void draw_guide_mark(Canvas& canvas, Point center, float radius, Face face, Color disc, Color mark);

// The same in the middle of a target that opens the guide: on sheets, which have no place on the
// rail.
inline constexpr float kGuideMark = 72.0f;
void guide_button(Ui& ui, Guide guide, Rect rect);

}  // namespace mastwise::ui
