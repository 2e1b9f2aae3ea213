#pragma once

#include "app/ui/canvas.hpp"

#include <string>
#include <string_view>

namespace mastwise::ui {

// The words if they fit into the width, else as many letters as fit before "..."; empty if not even
// one letter fits.
std::string shortened(const Canvas& canvas, std::string_view words, Face face, float width);

// Draws the words in this width. Letters that are larger than usual shrink to the usual size before
// they are cut.
void text_within(Canvas& canvas, Point at, float width, std::string_view words, Face face,
                 Color color, Align align = Align::Left);

// The share of their faces' size at which two texts fit on one line of this width, apart; not under
// the usual size.
struct TextFace {
  std::string_view words;
  Face face;
};
float share_of_both(const Canvas& canvas, float width, TextFace one, TextFace other);

}  // namespace mastwise::ui
