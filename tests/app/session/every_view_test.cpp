#include "tests/app/session/view_faults.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <catch2/catch.hpp>

// Every view is reached in English, which takes most of the time, and then shown as each screen,
// hand, look and language would have it. Targets are at least 9 mm square, 2 mm apart
// and on the screen (the design's figures); texts stay on the screen, in their clips and in their
// buttons, and over nothing else; keys reach everything; no word bypasses the table of languages.
using namespace mastwise;
using test::Stage;
using test::View;

namespace {

void set_language(Stage& stage, const char* language) {
  stage.set(act::ChooseSetting{"language", language});
}

// Both hands and both languages.
void check_layouts(Stage& stage, const View& view, const test::Screen& screen) {
  const auto check = [&](const char* hand, const char* language) {
    INFO(view.name << " on " << screen.name << ", " << hand << " hand, " << language);
    CHECK(test::view_faults(stage, screen) == "");
  };
  check("right", "English");
  {
    INFO(view.name << " on " << screen.name);
    CHECK(test::steps_against_reading(stage) == "");
  }
  set_language(stage, "es");
  check("right", "Spanish");
  stage.set(act::NextSetting{"left_handed"});
  check("left", "Spanish");
  set_language(stage, "en");
  check("left", "English");
  stage.set(act::NextSetting{"left_handed"});
}

// The colors of a view in every look, also with a finger on a row.
struct Colors {
  std::set<std::string> seen;
  int pressed = 0;
  void check(Stage& stage, const View& view) {
    for (const char* look : {"day", "night", "red"}) {
      stage.show_on(test::kTablet);  // lifts the finger
      stage.set(act::ChooseSetting{"look", look});
      INFO(view.name << " in the look " << look);
      CHECK(test::unlisted_colors(stage, seen) == "");
      if (!test::press_a_row(stage)) continue;
      ++pressed;
      INFO("with a finger on a row");
      CHECK(test::unlisted_colors(stage, seen) == "");
    }
  }
};

}  // namespace

TEST_CASE("every view has its targets, texts, colors and focus as any screen shows it") {
  constexpr std::size_t kSanitizedStep = 9;
  Colors colors;
  std::size_t number = 0;
  for (const View& view : test::views()) {
    if (test::kSanitized && number++ % kSanitizedStep != 0) continue;
    test::WordSet english;
    {
      Stage stage;
      view.reach(stage);
      english = test::drawn_words(stage);
      check_layouts(stage, view, test::kTablet);
      for (const test::Screen& screen : {test::kHeadUnit, test::kLargeTablet, test::kUpright}) {
        stage.show_on(screen);
        check_layouts(stage, view, screen);
      }
      colors.check(stage, view);
      for (const test::Screen& screen : {test::kTablet, test::kHeadUnit}) {
        stage.show_on(screen);
        INFO(view.name << " by keys on " << screen.name);
        CHECK(test::focus_faults(stage) == "");
      }
    }
    // Reports are written in the language of their time, so this one is Spanish from the start.
    Stage spanish;
    set_language(spanish, "es");
    view.reach(spanish);
    INFO(view.name);
    CHECK(test::untranslated(spanish, view.name, english) == "");
  }
  if (test::kSanitized) return;  // they draw few of the views
  CHECK(colors.pressed >= 15);
  CHECK(colors.seen.count("ink on lobe") == 1);
  CHECK(colors.seen.count("second ink on panel") == 1);
}
