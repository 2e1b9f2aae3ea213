#include "tests/app/session/view_faults.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <map>
#include <string>

#include <catch2/catch.hpp>

// The ledger of targets and texts at the larger text sizes, for every view. Not every size with
// every screen and language: Spanish has the longest words, so it is drawn on every screen, and
// English where letters are largest for their layout. How far the texts of each view really grow is
// measured from what is drawn, so that a view that stays small does not pass for one that grows.
using namespace mastwise;
using test::Stage;
using test::View;

namespace {

struct SizeSetting {
  test::Screen screen;
  const char* size;
  const char* language;
  float percent;       // wanted
  double least_share;  // of the texts that reach it: the others stand in narrow places
};

// A screen of 7 inches has no room for more than 139 percent.
constexpr SizeSetting kSizeSettings[]{
    {test::kTablet, "larger", "es", 130.0f, 0.8},
    {test::kTablet, "largest", "en", 160.0f, 0.7},
    {test::kTablet, "largest", "es", 160.0f, 0.7},
    {test::kUpright, "larger", "es", 130.0f, 0.8},
    {test::kUpright, "largest", "en", 160.0f, 0.7},
    {test::kUpright, "largest", "es", 160.0f, 0.65},
    {test::kLargeTablet, "larger", "es", 130.0f, 1.0},
    {test::kLargeTablet, "largest", "es", 160.0f, 0.85},
    {test::kHeadUnit, "largest", "es", 139.0f, 0.7},
};

std::string name_of(const SizeSetting& setting) {
  return std::string(setting.screen.name) + " " + setting.size + " " + setting.language;
}

// Of what is read as text; larger figures grow less.
bool is_text(ui::Face face) {
  return ui::em_units(face) <= ui::em_units(ui::Face::Value);
}

// The sizes of the drawn texts in percent of the usual size on this screen.
struct TextSizes {
  float least = 1000.0f;
  int whole = 0, all = 0;  // texts that reach the wanted size, and all
};

TextSizes sizes_of(const Stage& stage, const SizeSetting& setting) {
  constexpr float kLine = 1.215f;     // of the em, in this typeface
  constexpr float kRounding = 0.03f;  // letters have whole pixels
  const test::Screen& screen = setting.screen;
  const ui::Metrics usual = ui::metrics(screen.width_px, screen.height_px, screen.dots_per_inch);
  TextSizes sizes;
  for (const ui::DrawnText& text : stage.drawn()) {
    if (!is_text(text.face)) continue;
    const float now_px = text.rect.height() * stage.metrics().px_per_unit;
    const float percent = 100.0f * now_px / (kLine * ui::em_units(text.face) * usual.px_per_unit);
    sizes.least = std::min(sizes.least, percent);
    ++sizes.all;
    if (percent >= (1.0f - kRounding) * setting.percent) ++sizes.whole;
  }
  return sizes;
}

struct TextsReached {
  int views = 0, whole_views = 0;  // those in which every text reaches the wanted size
  int texts = 0, whole_texts = 0;
  float least = 1000.0f;
};

void check_setting(Stage& stage, const View& view, const SizeSetting& setting,
                   TextsReached& reached) {
  stage.show_on(setting.screen);
  stage.set(act::ChooseSetting{"text_size", setting.size});
  stage.set(act::ChooseSetting{"language", setting.language});
  stage.settle();
  INFO(view.name << " on " << name_of(setting));
  CHECK(test::view_faults(stage, setting.screen) == "");
  const TextSizes sizes = sizes_of(stage, setting);
  CHECK(sizes.least > 97.0f);  // nothing is smaller than usual
  ++reached.views;
  reached.whole_views += sizes.whole == sizes.all ? 1 : 0;
  reached.texts += sizes.all;
  reached.whole_texts += sizes.whole;
  reached.least = std::min(reached.least, sizes.least);
}

}  // namespace

TEST_CASE("every view keeps its targets and texts at the larger text sizes") {
  constexpr std::size_t kSanitizedStep = 9;
  std::map<std::string, TextsReached> all;
  std::size_t number = 0;
  for (const View& view : test::views()) {
    if (test::kSanitized && number++ % kSanitizedStep != 0) continue;
    Stage stage;
    view.reach(stage);
    for (const SizeSetting& setting : kSizeSettings) {
      check_setting(stage, view, setting, all[name_of(setting)]);
    }
  }
  if (test::kSanitized) return;  // they draw few of the views
  for (const SizeSetting& setting : kSizeSettings) {
    const TextsReached& reached = all[name_of(setting)];
    WARN(name_of(setting) << ": all texts whole in " << reached.whole_views << " of "
                          << reached.views << " views, " << reached.whole_texts << " of "
                          << reached.texts << " texts, the least at " << reached.least << " %");
    CHECK(static_cast<double>(reached.whole_texts) / reached.texts >= setting.least_share);
  }
}
