#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <set>
#include <string>

#include <catch2/catch.hpp>

// The texts in the pictures of all screens and covers: each has its contrast, is not cut and fits
// its button.
using namespace mastwise;
using test::PictureText;
using test::Stage;
using test::View;

namespace {

std::string hex(ui::Color color) {
  char text[8];
  std::snprintf(text, sizeof text, "#%02X%02X%02X", color.red, color.green, color.blue);
  return text;
}

// The texts whose colors are not a pair of the theme's list, with those colors. Adds the listed
// pairs to `seen`.
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

// A finger on the first row of a list or the first field, if the screen has one.
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

}  // namespace

TEST_CASE("every drawn text has a listed pair of colors, in every look") {
  for (const char* look : {"day", "night", "red"}) {
    std::set<std::string> seen;
    int pressed = 0;
    std::size_t number = 0;
    for (const View& view : test::views()) {
      if (test::kSanitized && number++ % 13 != 0) continue;
      Stage stage;
      stage.set(act::ChooseSetting{"look", look});
      view.reach(stage);
      INFO(view.name << " in the look " << look);
      CHECK(unlisted_colors(stage, seen) == "");
      if (!press_a_row(stage)) continue;
      ++pressed;
      INFO("with a finger on a row");
      CHECK(unlisted_colors(stage, seen) == "");
    }
    if (test::kSanitized) return;  // they draw few of the views
    CHECK(pressed >= 5);
    CHECK(seen.count("ink on lobe") == 1);
    CHECK(seen.count("second ink on panel") == 1);
  }
}
