#include "tests/app/session/view_faults.hpp"

#include <algorithm>
#include <cstdio>

namespace mastwise::test {
namespace {

std::string hex(ui::Color color) {
  char text[8];
  std::snprintf(text, sizeof text, "#%02X%02X%02X", color.red, color.green, color.blue);
  return text;
}

}  // namespace

std::string unlisted_colors(const Stage& stage, std::set<std::string>& seen) {
  const ui::Look look = stage.model().findings.look;
  const ui::Theme& theme = ui::theme(look);
  const auto pairs = ui::color_pairs(look);
  const double text_contrast = look == ui::Look::Red ? 4.5 : 7.0;
  std::string found;
  for (const PictureText& text : stage.texts()) {
    if (text.over_picture) continue;
    const ui::Color ground = text.ground.value_or(theme.paper);
    const auto pair = std::find_if(pairs.begin(), pairs.end(), [&](const ui::ColorPair& one) {
      return one.mark == text.color && one.ground == ground && one.minimum >= text_contrast;
    });
    if (pair == pairs.end()) {
      found += "  \"" + text.text + "\" " + hex(text.color) + " on " + hex(ground) + "\n";
    } else {
      seen.insert(pair->name);
    }
  }
  return found;
}

bool press_a_row(Stage& stage) {
  for (const touch::Target& target : stage.targets().all()) {
    if (target.joined.empty() || !target.enabled || target.visible_px().height() < 40.0f) continue;
    if (target.name.rfind("pin", 0) == 0 || target.visible_px().width() < 200.0f) continue;
    stage.finger(SDL_FINGERDOWN, target.visible_px().center());
    stage.round();
    return true;
  }
  return false;
}

}  // namespace mastwise::test
