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

void draw_chance_ring(Canvas& canvas, const Theme& theme, Look look, Point middle,
                      std::optional<double> chance_percent, bool wanted) {
  constexpr float kRadius = 13.0f, kWidth = 8.0f, kSegment_deg = 72.0f, kGap_deg = 10.0f;
  const std::size_t filled =
      chance_percent
          ? kChanceSegments - static_cast<std::size_t>(reception::chance_word(*chance_percent))
          : 0;
  canvas.disc(middle, kRadius + kWidth / 2.0f + 2.0f, theme.panel);
  canvas.circle(middle, kRadius + kWidth / 2.0f + 2.0f, theme.ink, 1.5f);
  for (std::size_t i = 0; i < filled; ++i) {
    const float from = kSegment_deg * static_cast<float>(i) + kGap_deg / 2.0f;
    canvas.arc(middle, kRadius, from, from + kSegment_deg - kGap_deg, chance_color(i, look),
               kWidth);
  }
  if (wanted) canvas.disc(middle, 6.0f, theme.accent);
}

}  // namespace mastwise::ui
