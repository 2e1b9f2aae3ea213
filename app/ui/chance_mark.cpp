#include "app/ui/chance_mark.hpp"

namespace mastwise::ui {
void draw_chance_mark(Ui& ui, Rect rect, reception::ChanceWord word) {
  constexpr float kGap = 6.0f, kRadius = 4.0f, kEdge = 2.0f;
  const std::size_t filled = kChanceSegments - static_cast<std::size_t>(word);
  const float width = (rect.width() - kGap * (kChanceSegments - 1)) / kChanceSegments;
  for (std::size_t i = 0; i < kChanceSegments; ++i) {
    const float left = rect.left + static_cast<float>(i) * (width + kGap);
    const Rect segment{left, rect.top, left + width, rect.bottom};
    if (i < filled) ui.canvas().fill(segment, chance_color(i, ui.look()), kRadius);
    ui.canvas().outline(segment, ui.theme().ink, kEdge, kRadius);
  }
}

}  // namespace mastwise::ui
