#include "tests/app/session/view_faults.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <catch2/catch.hpp>

// Every screen and cover on every screen size: targets are at least 9 mm square, 2 mm apart and on
// the screen (the design's figures); texts stay on the screen, in their clips and in their buttons.
using namespace mastwise;
using test::press;
using test::Stage;
using test::View;

namespace {

// Under the sanitizers a screen takes every seventeenth view; in Spanish on the larger ones, fewer.
void check_all(const test::Screen& screen, bool left_handed, const std::string& language = "en",
               std::size_t sanitized_step = 17) {
  std::size_t number = static_cast<std::size_t>(screen.width_px / 40.0f) + (left_handed ? 5 : 0);
  for (const View& view : test::views()) {
    if (test::kSanitized && number++ % sanitized_step != 0) continue;
    Stage stage(screen);
    if (left_handed) stage.set(act::NextSetting{"left_handed"});
    stage.set(act::ChooseSetting{"language", language});
    view.reach(stage);
    INFO(view.name << " on " << screen.name << (left_handed ? ", left-handed" : "") << " in "
                   << language);
    CHECK(test::view_faults(stage, screen) == "");
  }
}

}  // namespace

TEST_CASE("targets are 9 mm square, 2 mm apart and on the screen: 800x480") {
  check_all(test::kHeadUnit, false);
}
TEST_CASE("targets are 9 mm square, 2 mm apart and on the screen: 1280x800") {
  check_all(test::kTablet, false);
}
TEST_CASE("targets are 9 mm square, 2 mm apart and on the screen: 1920x1200") {
  check_all(test::kLargeTablet, false);
}
TEST_CASE("targets are 9 mm square, 2 mm apart and on the screen: upright") {
  check_all(test::kUpright, false);
}
TEST_CASE("whatever can be touched is 9 mm square, 2 mm apart and on the screen: left thumb") {
  for (const test::Screen& screen : test::kScreens) {
    check_all(screen, true);
  }
}

TEST_CASE("no layout is cut in Spanish: 800x480") {
  check_all(test::kHeadUnit, false, "es");
}
TEST_CASE("no layout is cut in Spanish: upright") {
  check_all(test::kUpright, false, "es");
}
TEST_CASE("no layout is cut in Spanish: 1280x800") {
  check_all(test::kTablet, false, "es", 40);
}
TEST_CASE("no layout is cut in Spanish: 1920x1200") {
  check_all(test::kLargeTablet, false, "es", 40);
}
TEST_CASE("no layout is cut in Spanish: left thumb") {
  check_all(test::kHeadUnit, true, "es", 40);
  if (!test::kSanitized) check_all(test::kTablet, true, "es");
}

TEST_CASE("on the roof whatever can be touched is 15 mm square and nothing is under 34 units") {
  for (const test::Screen& screen : test::kScreens) {
    for (const View& view : test::safety_views()) {
      const std::string_view name = view.name;
      if (!name.starts_with("roof") || name == "roof prompt") continue;
      Stage stage(screen);
      view.reach(stage);
      INFO(view.name << " on " << screen.name);
      REQUIRE(stage.model().safety.roof);
      CHECK(test::indented(stage.targets().problems(15.0)) == "");
      // Capitals and figures of B612 are 0.7 of its size high.
      const float least_px = 0.68f * 34.0f * stage.metrics().px_per_unit;
      for (const test::PictureText& text : stage.texts()) {
        if (text.text.find_first_of("0123456789ABCDEFGHIKLMNOPQRSTUVWXYZ") == std::string::npos) {
          continue;
        }
        INFO(text.text << " is " << text.rect_px.height() << " px high");
        CHECK(text.rect_px.height() >= least_px);
      }
    }
  }
}

TEST_CASE("a cover blocks all targets of the screen below") {
  Stage stage;
  stage.set(act::Show{Place::Aim});
  CHECK(stage.targets().find("place Here") != nullptr);
  stage.tap("raise");
  CHECK(stage.targets().find("place Here") == nullptr);
  CHECK(stage.targets().all().size() == 2);
}
