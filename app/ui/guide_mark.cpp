#include "app/ui/guide_mark.hpp"

#include "app/shared/actions.hpp"

namespace mastwise::ui {

void draw_guide_mark(Canvas& canvas, Point center, float radius, Face face, Color disc,
                     Color mark) {
  constexpr float kHalfCapital = 0.36f;
  canvas.disc(center, radius, disc);
  canvas.text({center.x, center.y + kHalfCapital * em_units(face)}, "?", face, mark, Align::Center);
}

void guide_button(Ui& ui, Guide guide, Rect rect) {
  constexpr float kRadius = 23.0f;
  const std::string name =
      "guide " + std::string(kStoredNames<Guide>[static_cast<std::size_t>(guide)]);
  if (ui.touchable(name, rect)) ui.emit(act::OpenGuide{guide});
  const Theme& theme = ui.theme();
  const bool lit = ui.pressed(name);
  draw_guide_mark(ui.canvas(), rect.center(), kRadius, Face::Cardinal,
                  lit ? theme.ink : theme.accent, lit ? theme.paper : theme.on_accent);
}

}  // namespace mastwise::ui
