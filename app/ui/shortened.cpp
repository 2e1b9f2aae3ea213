#include "app/ui/shortened.hpp"

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

}  // namespace mastwise::ui
