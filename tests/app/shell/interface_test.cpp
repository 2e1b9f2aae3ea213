#include "app/shell/interface.hpp"

#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

namespace {

// Queues a tap without drawing.
void queue_tap(Stage& stage, const std::string& name) {
  const touch::Point place = stage.middle_of(name);
  stage.finger(SDL_FINGERDOWN, place);
  stage.finger(SDL_FINGERUP, place);
}

touch::Point middle_of_list(const Stage& stage) {
  return stage.middle_of("search") + touch::Point{0.0f, 300.0f};
}

}  // namespace

TEST_CASE("all taps within one frame count, in order") {
  Stage stage;
  stage.tap("type position");
  for (const char* key : {"key 4", "key 2", "key 4", "key 4"}) queue_tap(stage, key);
  stage.round();
  CHECK(stage.model().keypad->text == "4244");
}

TEST_CASE("a second tap within one frame does not hit targets that the first one opened") {
  Stage stage;
  stage.tap("place Aim");
  const touch::Point raise = stage.middle_of("raise");
  queue_tap(stage, "raise");
  stage.finger(SDL_FINGERDOWN, raise);
  stage.finger(SDL_FINGERUP, raise);
  stage.round();
  CHECK(stage.model().safety.asking == Asking::Raise);
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
}

TEST_CASE("a finger that slides off a button does not press it") {
  Stage stage;
  const touch::Point from = stage.middle_of("look");
  stage.drag(from, from - touch::Point{0.0f, 150.0f}, milliseconds(200));
  stage.settle();
  CHECK(stage.model().settings.look == LookChoice::Day);
}

TEST_CASE("a finger held on a button does not tap it") {
  Stage stage;
  stage.hold("look", milliseconds(900));
  CHECK(stage.model().settings.look == LookChoice::Day);
}

TEST_CASE("dragging scrolls the list and taps no station") {
  Stage stage;
  stage.tap("place Stations");
  const std::string first = stage.targets().all().back().name;
  const touch::Point from = middle_of_list(stage);
  stage.drag(from, from - touch::Point{0.0f, 250.0f}, milliseconds(400));
  stage.settle();
  CHECK(stage.model().place == Place::Stations);
  CHECK(stage.targets().all().back().name != first);
}

TEST_CASE("a drag that lifts outside the window leaves nothing pressed") {
  Stage stage;
  stage.tap("place Stations");
  const touch::Point from = middle_of_list(stage);
  stage.drag(from, {from.x, -400.0f}, milliseconds(400));
  stage.settle();
  stage.tap("place Here");
  CHECK(stage.model().place == Place::Here);
}

TEST_CASE("a finger on a gliding list stops it, and elsewhere it taps") {
  Stage stage;
  stage.tap("place Stations");
  const touch::Point from = middle_of_list(stage);
  stage.drag(from, from - touch::Point{0.0f, 200.0f}, milliseconds(80));
  REQUIRE(stage.moving());
  SECTION("on the list") {
    stage.finger(SDL_FINGERDOWN, from);
    stage.finger(SDL_FINGERUP, from);
    stage.round();
    CHECK_FALSE(stage.moving());
    CHECK(stage.model().place == Place::Stations);
  }
  SECTION("on the rail") {
    queue_tap(stage, "place Here");
    stage.round();
    CHECK(stage.model().place == Place::Here);
  }
}

TEST_CASE("a gliding list does not swallow the touch that quiets the alarm") {
  Stage stage;
  const Position parked = *Position::at_deg(42.5, -118.5);
  stage.set(act::Ask{Asking::Raise});
  stage.set(act::ConfirmAsked{});
  stage.tap("place Stations");
  const touch::Point from = middle_of_list(stage);
  stage.drag(from, from - touch::Point{0.0f, 200.0f}, milliseconds(80));
  REQUIRE(stage.moving());
  stage.receive(test::epoch(36'000, parked, 20.0, 90.0));
  stage.round();
  REQUIRE(stage.model().safety.drive == safety::Drive::Alarm);
  queue_tap(stage, "quiet alarm");
  stage.round();
  CHECK(stage.model().safety.quiet_until == stage.now() + milliseconds(30'000));
}

TEST_CASE(
    "the driving screen has only the passenger's button, and all screens return when the rig "
    "stops") {
  Stage stage;
  const Position parked = *Position::at_deg(42.5, -118.5);
  stage.tap("place Aim");
  // 5 knots are 9.3 km/h, above the design's 8 km/h.
  stage.receive(test::epoch(36'000, parked, 5.0, 90.0));
  stage.settle();
  CHECK(stage.shows("Antenna down"));
  REQUIRE(stage.targets().all().size() == 1);
  CHECK(stage.targets().all().front().name == "passenger");
  stage.wait(milliseconds(1000));
  stage.receive(test::epoch(36'001, parked, 0.0));
  stage.settle();
  CHECK(stage.shows("59 ft off"));
}

TEST_CASE("two fingers and a third press nothing") {
  Stage stage;
  const touch::Point place = stage.middle_of("look");
  for (const SDL_FingerID id : {1, 2, 3}) {
    SDL_Event event{};
    event.tfinger.type = SDL_FINGERDOWN;
    event.tfinger.fingerId = id;
    event.tfinger.x = place.x / test::kTablet.width_px;
    event.tfinger.y = place.y / test::kTablet.height_px;
    REQUIRE(SDL_PushEvent(&event) == 1);
    event.tfinger.type = SDL_FINGERUP;
    if (id == 3) {
      for (const SDL_FingerID up : {1, 2, 3}) {
        event.tfinger.fingerId = up;
        REQUIRE(SDL_PushEvent(&event) == 1);
      }
    }
  }
  stage.settle();
  CHECK(stage.model().settings.look == LookChoice::Day);
}

TEST_CASE("a mouse and SDL's echo of a finger make one press each") {
  Stage stage;
  const touch::Point place = stage.middle_of("look");
  const auto mouse = [&](Uint32 type, Uint32 which) {
    SDL_Event event{};
    event.button.type = type;
    event.button.which = which;
    event.button.button = SDL_BUTTON_LEFT;
    event.button.x = static_cast<int>(place.x);
    event.button.y = static_cast<int>(place.y);
    REQUIRE(SDL_PushEvent(&event) == 1);
  };
  stage.tap("look");
  mouse(SDL_MOUSEBUTTONDOWN, SDL_TOUCH_MOUSEID);
  mouse(SDL_MOUSEBUTTONUP, SDL_TOUCH_MOUSEID);
  stage.settle();
  CHECK(stage.model().settings.look == LookChoice::Night);
  stage.wait(milliseconds(1000));
  mouse(SDL_MOUSEBUTTONDOWN, 0);
  mouse(SDL_MOUSEBUTTONUP, 0);
  stage.settle();
  CHECK(stage.model().settings.look == LookChoice::Day);
}

TEST_CASE("without changes the window does not redraw") {
  for (const char* place : {"place Here", "place Stations", "place Aim"}) {
    Stage stage;
    stage.tap(place);
    stage.wait(milliseconds(500));
    CHECK_FALSE(stage.moving());
  }
}
