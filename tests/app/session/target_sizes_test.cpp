#include "tests/app/session/view_faults.hpp"
#include "tests/app/session/views.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::press;
using test::Stage;
using test::View;

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
