#pragma once

#include "app/ui/canvas.hpp"

#include <string>
#include <string_view>

namespace mastwise::ui {

// The words when they fit into the width, else as many of their letters as do with "..." at the
// end; empty when not even one letter does.
std::string shortened(const Canvas& canvas, std::string_view words, Face face, float width);

}  // namespace mastwise::ui
