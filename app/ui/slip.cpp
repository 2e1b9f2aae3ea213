#include "app/ui/slip.hpp"

#include "app/ui/lit_row.hpp"
#include "app/ui/shortened.hpp"

#include <algorithm>
#include <array>

namespace mastwise::ui {

bool slip(Ui& ui, const std::string& name, Rect rect, const std::string& label,
          const std::string& value, bool enabled) {
  constexpr float kFold = 24.0f, kMargin = 18.0f, kBetween = 14.0f;
  const bool touched = ui.touchable(name, rect, enabled);
  const Theme& theme = ui.theme();
  Canvas& canvas = ui.canvas();
  const bool lit = ui.pressed(name);
  const Color edge = enabled ? theme.accent : theme.rule;
  const std::array outline{Point{rect.left, rect.top}, Point{rect.right - kFold, rect.top},
                           Point{rect.right, rect.top + kFold}, Point{rect.right, rect.bottom},
                           Point{rect.left, rect.bottom}};
  canvas.polygon(outline, lit ? theme.lobe : theme.panel);
  canvas.polyline(outline, edge, 2.5f, true);
  const std::array fold{Point{rect.right - kFold, rect.top}, Point{rect.right, rect.top + kFold},
                        Point{rect.right - kFold, rect.top + kFold}};
  canvas.polygon(fold, edge);
  const float baseline = rect.center().y + 9.0f;
  float left = rect.left + kMargin;
  if (!label.empty()) {
    // Label and value in letters of one size.
    const float both =
        canvas.text_width(label, Face::Text) + canvas.text_width(value, Face::TextBold);
    const float room = rect.width() - 2.0f * kMargin - kBetween;
    const float share = std::clamp(room / both, canvas.usual_share(Face::Text), 1.0f);
    const float most = (rect.right - kFold - left) / share;
    const std::string fitted = shortened(canvas, label, Face::Text, most);
    canvas.text({left, baseline}, fitted, Face::Text, second_ink_on_row(theme, lit), Align::Left,
                share);
    left += share * canvas.text_width(fitted, Face::Text) + kBetween;
  }
  const float room = rect.right - kMargin - left;
  text_within(canvas, {left, baseline}, room, value, Face::TextBold, theme.ink);
  return touched;
}

}  // namespace mastwise::ui
