#include "core/catalog/catalog.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"
#include "tests/support/temporary_folder.hpp"

#include <functional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

// Walks by keys or a knob alone, no finger and no mouse.
using namespace mastwise;
using test::Stage;

namespace {

constexpr test::Screen kBoth[]{test::kHeadUnit, test::kTablet};

void press_on(Stage& stage, const std::string& target) {
  stage.focus(target);
  stage.key(SDLK_RETURN);
}

std::vector<std::string> acts_of(Stage& stage, const std::function<void()>& walk) {
  std::vector<std::string> names;
  stage.session().record_to([&](const Action& action) {
    if (!action.is<act::Tick>()) names.emplace_back(action.name());
  });
  walk();
  stage.session().record_to([](const Action&) {});
  return names;
}

}  // namespace

TEST_CASE("keys: first start to a practice heading") {
  for (const test::Screen& screen : kBoth) {
    INFO(screen.name);
    Stage stage(screen, {}, true);
    REQUIRE(stage.model().sheet == Sheet::Start);
    press_on(stage, "practice");
    CHECK(stage.model().place == Place::Stations);
    press_on(stage, "turn 0");
    CHECK(stage.model().place == Place::Aim);
    REQUIRE(stage.model().findings.card);
  }
}

TEST_CASE("keys: first start, the position typed on a keyboard") {
  for (const test::Screen& screen : kBoth) {
    INFO(screen.name);
    test::TemporaryFolder folder;
    test::fill_catalog(folder.file("catalog"));
    Stage stage(screen, folder.path(), true);
    stage.set(act::OpenKeypad{KeypadPurpose::Position});
    stage.type("42.5, -118.5");
    CHECK(stage.focused() == "key Use it");
    stage.key(SDLK_RETURN);
    CHECK(stage.model().findings.position == test::kDryLake);
    press_on(stage, "show");
    press_on(stage, "turn 0");
    CHECK(stage.model().findings.card);
  }
}

TEST_CASE("keys: a raised antenna needs a held key, and refusing needs one") {
  for (const test::Screen& screen : kBoth) {
    INFO(screen.name);
    Stage stage(screen);
    press_on(stage, "place Aim");
    press_on(stage, "raise");
    REQUIRE(stage.model().safety.asking == Asking::Raise);
    CHECK(stage.focused() == "refuse");
    stage.key(SDLK_ESCAPE);
    CHECK(stage.model().safety.asking == Asking::Nothing);
    CHECK(stage.focused() == "raise");
    stage.key(SDLK_RETURN);
    stage.wait(touch::kPromptRest);
    stage.focus("confirm");
    stage.key(SDLK_RETURN);  // a tap is not a hold
    REQUIRE(stage.model().safety.asking == Asking::Raise);
    stage.hold_key(SDLK_RETURN, touch::kHoldToConfirm - milliseconds(100));
    REQUIRE(stage.model().safety.asking == Asking::Raise);
    stage.hold_key(SDLK_RETURN, touch::kHoldToConfirm + milliseconds(100));
    CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
  }
}

TEST_CASE("keys: neither repeats nor a key held since before pass a prompt") {
  Stage stage;
  press_on(stage, "place Aim");
  stage.focus("raise");
  stage.key_event(SDL_KEYDOWN, SDLK_RETURN);
  stage.key_event(SDL_KEYUP, SDLK_RETURN);
  stage.key_event(SDL_KEYDOWN, SDLK_RETURN);  // a second press at once
  stage.round();
  stage.key_event(SDL_KEYDOWN, SDLK_TAB);
  stage.key_event(SDL_KEYDOWN, SDLK_RETURN);
  for (int i = 0; i < 150; ++i) {
    stage.key_event(SDL_KEYDOWN, SDLK_RETURN, true);
    stage.key_event(SDL_KEYDOWN, SDLK_SPACE, true);
    stage.wait(milliseconds(32));
  }
  REQUIRE(stage.model().safety.asking == Asking::Raise);
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
}

TEST_CASE("keys: the focus never leaves a prompt, and typing does not reach below it") {
  for (const test::View& view : test::safety_views()) {
    Stage stage;
    view.reach(stage);
    if (stage.model().safety.asking == Asking::Nothing) continue;
    INFO(view.name);
    for (const SDL_Keycode key : {SDLK_TAB, SDLK_RIGHT, SDLK_DOWN, SDLK_TAB, SDLK_LEFT, SDLK_UP,
                                  SDLK_PAGEDOWN, SDLK_TAB, SDLK_TAB}) {
      stage.key(key);
      const std::string name = stage.focused();
      CHECK((name == "refuse" || name == "confirm" || name == "scroll cautions" ||
             name == "will lower"));
    }
    const auto acts = acts_of(stage, [&] { stage.type("42"); });
    CHECK(acts.empty());
  }
}

TEST_CASE("keys: an outcome in the logbook") {
  for (const test::Screen& screen : kBoth) {
    INFO(screen.name);
    Stage stage(screen);
    stage.set(act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = test::kDryLake}});
    stage.set(act::SetStop{stage.practice_stop()});
    press_on(stage, "place Logbook");
    std::string row;
    for (const touch::Target& target : stage.targets().all()) {
      if (row.empty() && target.enabled && target.name.starts_with("saw ")) row = target.name;
    }
    std::string names;
    for (const touch::Target& target : stage.targets().all()) names += target.name + "; ";
    INFO(names);
    REQUIRE(!row.empty());
    const auto by_keys = acts_of(stage, [&] { press_on(stage, row); });
    REQUIRE(by_keys.size() >= 1);
    stage.set(act::TakeBack{});
    const auto by_finger = acts_of(stage, [&] { stage.tap(row); });
    CHECK(by_keys == by_finger);
  }
}

TEST_CASE("keys: the passenger's button needs 3 s of a held key while driving") {
  const auto views = test::safety_views();
  for (const test::View& view : views) {
    if (std::string_view(view.name) != "under way") continue;
    Stage stage;
    view.reach(stage);
    int second = 3;  // the view's own epochs come before
    const auto hold_driving = [&](milliseconds time) {
      constexpr milliseconds kStep{16};
      stage.key_event(SDL_KEYDOWN, SDLK_RETURN);
      for (milliseconds passed{0}; passed < time; passed += kStep) {
        if (passed / milliseconds(1000) != (passed - kStep) / milliseconds(1000)) {
          stage.receive(test::epoch(36'000 + second++, test::kDryLake, 20.0, 90.0));
        }
        if (passed > milliseconds(500)) stage.key_event(SDL_KEYDOWN, SDLK_RETURN, true);
        stage.late_round(kStep);
      }
      stage.key_event(SDL_KEYUP, SDLK_RETURN);
      stage.settle();
    };
    stage.focus("passenger");
    hold_driving(milliseconds(2800));
    CHECK_FALSE(stage.model().safety.passenger_until);
    hold_driving(touch::kHoldToUnlock + milliseconds(200));
    CHECK(stage.model().safety.passenger_until);
    return;
  }
  FAIL("no view under way");
}

TEST_CASE("a finger hides the focus, a key shows it where it was") {
  Stage stage;
  stage.focus("place Stations");
  stage.tap_at({stage.metrics().width_px - 2.0f, 2.0f});
  CHECK(stage.focused().empty());
  stage.key(SDLK_DOWN);
  CHECK(stage.focused() == "place Stations");
  CHECK(stage.model().place == Place::Here);
}

TEST_CASE("Escape goes back from sheets, keypad and explanation") {
  Stage stage;
  stage.set(act::OpenSheet{Sheet::Settings});
  stage.key(SDLK_ESCAPE);
  CHECK(stage.model().sheet == Sheet::None);
  stage.set(act::OpenKeypad{KeypadPurpose::Position});
  stage.key(SDLK_ESCAPE);
  CHECK_FALSE(stage.model().keypad);
  stage.set(act::Explain{"magnetic"});
  stage.key(SDLK_ESCAPE);
  CHECK(stage.model().explained.empty());
  stage.key(SDLK_ESCAPE);
  CHECK(stage.model().place == Place::Here);
}

TEST_CASE("a key that is held explains a word of the trade") {
  Stage stage;
  press_on(stage, "place Aim");
  stage.hold_key(SDLK_RETURN, milliseconds(900));
  CHECK_FALSE(stage.model().explained.empty());
  CHECK(stage.model().place == Place::Aim);
}

TEST_CASE("a knob that turns a wheel moves the focus where nothing scrolls") {
  Stage stage;
  const touch::Point on_rail = stage.middle_of("place Here");
  stage.wheel(on_rail, -1.0f);
  CHECK(stage.focused() == "place Here");
  stage.wheel(on_rail, -2.0f);
  CHECK(stage.focused() == "place Map");
  stage.wheel(on_rail, 1.0f);
  CHECK(stage.focused() == "place Stations");
  // Over the map it zooms.
  stage.set(act::Show{Place::Map});
  const double before = stage.model().map.view.meters_per_unit;
  stage.wheel({640.0f, 400.0f}, 1.0f);
  CHECK(stage.model().map.view.meters_per_unit < before);
  CHECK(stage.focused() == "place Stations");
}

TEST_CASE("keys move the map under a cross, touch there and hold there") {
  Stage stage;
  press_on(stage, "place Map");
  stage.focus("map");
  stage.key(SDLK_RETURN);
  const MapView before = stage.model().map.view;
  const auto acts = acts_of(stage, [&] {
    stage.key(SDLK_RIGHT);
    stage.key(SDLK_UP);
    stage.key(SDLK_TAB);
  });
  CHECK(acts == std::vector<std::string>{"MoveMap", "MoveMap", "MoveMap"});
  CHECK(stage.model().map.view.middle.east_m > before.middle.east_m);
  CHECK(stage.model().map.view.middle.north_m > before.middle.north_m);
  CHECK(stage.model().map.view.meters_per_unit < before.meters_per_unit);
  CHECK(acts_of(stage, [&] { stage.key(SDLK_RETURN); }) == std::vector<std::string>{"TouchMap"});
  // What is there is then asked of a worker.
  CHECK(acts_of(stage, [&] { stage.hold_key(SDLK_RETURN, milliseconds(900)); }).front() ==
        "HoldMap");
  stage.key(SDLK_ESCAPE);
  stage.key(SDLK_TAB);
  CHECK(stage.focused() != "map");
}

TEST_CASE("page keys scroll, and the focus comes along") {
  Stage stage(test::kHeadUnit);
  stage.set(act::Show{Place::Stations});
  stage.focus("search");
  stage.key(SDLK_TAB);
  for (int i = 0; i < 3; ++i) stage.key(SDLK_PAGEDOWN);
  stage.key(SDLK_DOWN);
  const touch::Target* target = stage.targets().find(stage.focused());
  REQUIRE(target != nullptr);
  CHECK_FALSE(target->visible_px().empty());
}
