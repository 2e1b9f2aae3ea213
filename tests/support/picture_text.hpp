#pragma once

#include "app/look/theme.hpp"
#include "app/touch/geometry.hpp"

#include <optional>
#include <string>
#include <vector>

struct ImDrawData;

namespace mastwise::test {

// A piece of text on a picture, drawn by one call and recovered from the letters that the picture's
// triangles use of the font's texture.
struct PictureText {
  std::string text;
  touch::Rect rect_px;  // of its letters, not cut
  touch::Rect clip_px;  // the visible part of the picture
  ui::Color color;
  // The color drawn last below its middle, or empty before the first fill.
  std::optional<ui::Color> ground = {};
  bool over_picture = false;  // an image or a blend is below its middle instead
};

// In the order drawn. Needs the context that made the picture to be current.
std::vector<PictureText> texts_of(const ImDrawData& picture);

}  // namespace mastwise::test
