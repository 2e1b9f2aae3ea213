#include "app/ui/shortened.hpp"

#include <algorithm>

namespace mastwise::ui {

std::string shortened(const Canvas& canvas, std::string_view words, Face face, float width) {
  if (canvas.text_width(words, face) <= width) return std::string(words);
  while (!words.empty()) {
    const auto follows = [&] { return (static_cast<unsigned char>(words.back()) & 0xC0) == 0x80; };
    while (words.size() > 1 && follows()) words.remove_suffix(1);
    words.remove_suffix(1);
    while (words.ends_with(' ')) words.remove_suffix(1);
    const std::string shorter = std::string(words) + "...";
    if (!words.empty() && canvas.text_width(shorter, face) <= width) return shorter;
  }
  return {};
}

void text_within(Canvas& canvas, Point at, float width, std::string_view words, Face face,
                 Color color, Align align) {
  const float share = canvas.size_within(width, words, face);
  const std::string fitting = shortened(canvas, words, face, width / share);
  canvas.text(at, fitting, face, color, align, share);
}

float share_of_both(const Canvas& canvas, float width, TextFace one, TextFace other) {
  constexpr float kApart = 14.0f;
  const float both =
      canvas.text_width(one.words, one.face) + canvas.text_width(other.words, other.face);
  const float least = std::max(canvas.usual_share(one.face), canvas.usual_share(other.face));
  return both <= width - kApart ? 1.0f : std::clamp((width - kApart) / both, least, 1.0f);
}

}  // namespace mastwise::ui
