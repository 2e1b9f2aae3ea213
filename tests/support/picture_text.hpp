#pragma once

#include "app/touch/geometry.hpp"

#include <string>
#include <vector>

struct ImDrawData;

namespace mastwise::test {

// A piece of text on a picture, as drawn by one call: found again from the letters that the
// picture's triangles take from the font's texture.
struct PictureText {
  std::string text;
  touch::Rect rect_px;  // of its letters, not cut
  touch::Rect clip_px;  // the part of the picture that it may be seen in
};

// In the order drawn. Needs the context that made the picture to be current.
std::vector<PictureText> texts_of(const ImDrawData& picture);

}  // namespace mastwise::test
