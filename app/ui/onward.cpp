#include "app/ui/onward.hpp"

#include "app/ui/lit_row.hpp"

#include <array>

namespace mastwise::ui {

bool onward(Ui& ui, const std::string& name, Rect rect, const std::string& joined) {
  const bool touched = ui.touchable(name, rect, true, joined);
  const Theme& theme = ui.theme();
  const bool lit = ui.pressed(name);
  if (lit) ui.canvas().fill(rect, theme.lobe, 10.0f);
  const float x = rect.right - 22.0f, y = rect.center().y;
  const std::array chevron{Point{x - 6.0f, y - 12.0f}, Point{x + 6.0f, y},
                           Point{x - 6.0f, y + 12.0f}};
  ui.canvas().polyline(chevron, accent_on_row(theme, lit), 4.5f);
  return touched;
}

}  // namespace mastwise::ui
