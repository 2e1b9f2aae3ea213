#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace mastwise::ui {

// A picture of colored points, row by row from the upper left. Canvas::image draws it; the painter
// uploads it when its version has changed. Its address is its name there.
struct Bitmap {
  int width = 0, height = 0;
  std::vector<std::uint32_t> rgba = {};  // bytes red, green, blue, opacity
  std::uint64_t version = 0;             // of the content; 0 before there is any
};

using Bitmaps = std::map<std::string, Bitmap>;

}  // namespace mastwise::ui
