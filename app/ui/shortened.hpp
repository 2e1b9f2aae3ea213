#pragma once

#include "app/ui/canvas.hpp"

#include <string>
#include <string_view>

namespace mastwise::ui {

// The words if they fit into the width, else as many letters as fit before "..."; empty if not even
// one letter fits.
std::string shortened(const Canvas& canvas, std::string_view words, Face face, float width);

}  // namespace mastwise::ui
