#include "app/safety/draw_prompt_layout.hpp"
#include "app/safety/update.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using safety::Antenna;
using test::Stage;

namespace {

constexpr std::array kScreens{test::kHeadUnit, test::kTablet, test::kLargeTablet, test::kUpright};
constexpr test::Screen kHeadUnitUpright{"480x800", 480.0f, 800.0f, 133.0f};

// Distance from a point to a rectangle, in units.
float distance_to(ui::Rect rect, ui::Point point) {
  const ui::Point nearest{std::clamp(point.x, rect.left, rect.right),
                          std::clamp(point.y, rect.top, rect.bottom)};
  return touch::distance(point, nearest);
}

void tap_at(Stage& stage, touch::Point place, milliseconds down_for) {
  stage.finger(SDL_FINGERDOWN, place);
  stage.late_round(down_for);
  stage.finger(SDL_FINGERUP, place);
  stage.round();
}

// With the antenna marked up; on Aim.
void raise_antenna(Stage& stage) {
  stage.set(act::Show{Place::Aim});
  stage.tap("raise");
  stage.confirm();
  REQUIRE(stage.model().safety.antenna == Antenna::Raised);
}

}  // namespace

TEST_CASE("a prompt's confirm button is 30 mm from the finger that opened it") {
  for (const bool left_handed : {false, true}) {
    for (const test::Screen& screen :
         {kScreens[0], kScreens[1], kScreens[2], kScreens[3], kHeadUnitUpright}) {
      const auto metrics = ui::metrics(screen.width_px, screen.height_px, screen.dots_per_inch);
      const ui::Rect page =
          ui::Rect{0.0f, 0.0f, metrics.width(), metrics.height()}.inset(1.5f * ui::kMargin);
      constexpr int kSteps = 60;
      float nearest_mm = 1000.0f;
      for (int step = 0; step <= kSteps * kSteps; ++step) {
        const ui::Point finger{metrics.width() * static_cast<float>(step % kSteps) / kSteps,
                               metrics.height() * static_cast<float>(step / kSteps) / kSteps};
        const PromptLayout layout = prompt_layout(page, finger, left_handed);
        CHECK_FALSE(layout.confirm.overlaps(layout.refuse));
        CHECK_FALSE(layout.confirm.overlaps(layout.text));
        const float units = distance_to(layout.confirm, finger);
        nearest_mm = std::min(nearest_mm, units * metrics.px_per_unit / metrics.px_per_mm);
      }
      INFO(screen.name << " " << nearest_mm << " mm");
      CHECK(nearest_mm >= 30.0f);
    }
  }
}

TEST_CASE("a fast double tap on a button that opens a prompt does not pass it") {
  for (const test::Screen& screen : kScreens) {
    for (const int apart_ms : {50, 150, 250, 400, 600}) {
      INFO(screen.name << ", " << apart_ms << " ms apart");
      Stage stage(screen);
      const auto tap_three_times = [&](const char* target) {
        const touch::Point place = stage.middle_of(target);
        for (int tap = 0; tap < 3; ++tap) {
          tap_at(stage, place, milliseconds(30));
          stage.late_round(milliseconds(apart_ms));
        }
        stage.settle();
      };
      stage.tap("place Aim");
      tap_three_times("roof");
      CHECK_FALSE(stage.model().safety.roof);
      CHECK(stage.model().safety.asking == Asking::Roof);
      stage.tap("refuse");
      tap_three_times("raise");
      CHECK(stage.model().safety.antenna == Antenna::Down);
      CHECK(stage.model().safety.asking == Asking::Raise);
      stage.confirm();
      tap_three_times("lower");
      CHECK(stage.model().safety.antenna == Antenna::Raised);
      CHECK(stage.model().safety.asking == Asking::Drive);
    }
  }
}

TEST_CASE("a prompt ignores a touch that began in its first 0.7 s, however long the hold") {
  Stage stage;
  stage.tap("place Aim");
  tap_at(stage, stage.middle_of("raise"), milliseconds(30));
  const touch::Point place = stage.middle_of("confirm");
  stage.late_round(milliseconds(600));
  stage.finger(SDL_FINGERDOWN, place);
  for (int round = 0; round < 200; ++round) stage.late_round(milliseconds(16));
  CHECK(stage.model().safety.antenna == Antenna::Down);
  stage.finger(SDL_FINGERUP, place);
  stage.settle();
  stage.confirm();
  CHECK(stage.model().safety.antenna == Antenna::Raised);
}

TEST_CASE("the hold is 0.8 s of drawn frames: a stall confirms nothing") {
  Stage stage;
  stage.tap("place Aim");
  stage.tap("raise");
  const touch::Point place = stage.middle_of("confirm");
  SECTION("shorter") {
    stage.hold("confirm", milliseconds(780));
    CHECK(stage.model().safety.antenna == Antenna::Down);
  }
  SECTION("long enough") {
    stage.hold("confirm", milliseconds(850));
    CHECK(stage.model().safety.antenna == Antenna::Raised);
  }
  SECTION("one late frame") {
    stage.finger(SDL_FINGERDOWN, place);
    stage.round();
    stage.late_round(milliseconds(5'000));
    CHECK(stage.model().safety.antenna == Antenna::Down);
    stage.finger(SDL_FINGERUP, place);
    stage.settle();
    CHECK(stage.model().safety.antenna == Antenna::Down);
  }
  SECTION("a finger that slides off and comes back") {
    stage.finger(SDL_FINGERDOWN, place);
    for (int round = 0; round < 30; ++round) stage.late_round(milliseconds(16));
    stage.finger(SDL_FINGERMOTION, {place.x, place.y - 300.0f});
    stage.late_round(milliseconds(16));
    stage.finger(SDL_FINGERMOTION, place);
    for (int round = 0; round < 100; ++round) stage.late_round(milliseconds(16));
    stage.finger(SDL_FINGERUP, place);
    stage.settle();
    CHECK(stage.model().safety.antenna == Antenna::Down);
  }
  SECTION("a second finger ends it") {
    stage.finger(SDL_FINGERDOWN, place);
    for (int round = 0; round < 30; ++round) stage.late_round(milliseconds(16));
    stage.finger(SDL_FINGERDOWN, {40.0f, 40.0f}, 8);
    for (int round = 0; round < 100; ++round) stage.late_round(milliseconds(16));
    CHECK(stage.model().safety.antenna == Antenna::Down);
  }
}

namespace {

// Accidental touches: up to three taps in a row, several fingers, swipes. No single finger rests as
// long as a prompt requires.
class Storm {
 public:
  Storm(Stage& stage, unsigned seed) : stage_(stage), random_(seed) {}

  int touches() const { return touches_; }

  void blow() {
    switch (pick(0, 3)) {
      case 0:
        return taps(pick(1, 3));
      case 1:
        return taps(1);
      case 2:
        return fingers();
      default:
        return swipe();
    }
  }

 private:
  int pick(int least, int most) { return std::uniform_int_distribution(least, most)(random_); }
  void pass(int time_ms) {
    for (int step = 0; time_ms > 0; time_ms -= step) {
      step = std::min(time_ms, pick(8, 90));
      stage_.late_round(milliseconds(step));
    }
  }
  // Mostly on the confirm button, else anywhere.
  touch::Point place() {
    const touch::Target* confirm = stage_.targets().find("confirm");
    if (confirm != nullptr && pick(0, 9) < 7) {
      const touch::Rect& rect = confirm->rect_px;
      return {rect.left + rect.width() * static_cast<float>(pick(1, 99)) / 100.0f,
              rect.top + rect.height() * static_cast<float>(pick(1, 99)) / 100.0f};
    }
    return {static_cast<float>(pick(0, static_cast<int>(stage_.metrics().width_px) - 1)),
            static_cast<float>(pick(0, static_cast<int>(stage_.metrics().height_px) - 1))};
  }
  void down(touch::Point at, SDL_FingerID id) {
    stage_.finger(SDL_FINGERDOWN, at, id);
    ++touches_;
  }

  void taps(int count) {
    const touch::Point at = place();
    for (int tap = 0; tap < count; ++tap) {
      down(at, 1);
      pass(pick(10, 700));
      stage_.finger(SDL_FINGERUP, at, 1);
      pass(pick(10, 400));
    }
  }
  void fingers() {
    const int count = pick(2, 4);
    std::vector<touch::Point> places;
    for (int finger = 0; finger < count; ++finger) {
      places.push_back(place());
      down(places.back(), finger);
      pass(pick(0, 150));
    }
    pass(pick(0, 1'500));
    for (int finger = 0; finger < count; ++finger) {
      stage_.finger(SDL_FINGERUP, places[static_cast<std::size_t>(finger)], finger);
      pass(pick(0, 200));
    }
  }
  void swipe() {
    const touch::Point from = place(), to = place();
    down(from, 1);
    const int steps = pick(2, 12);
    for (int step = 1; step <= steps; ++step) {
      pass(pick(8, 60));
      stage_.finger(SDL_FINGERMOTION,
                    from + (to - from) * (static_cast<float>(step) / static_cast<float>(steps)), 1);
    }
    // A swipe without movement is a tap, so it lifts in time.
    stage_.finger(SDL_FINGERUP, to, 1);
    pass(pick(10, 300));
  }

  Stage& stage_;
  std::mt19937 random_;
  int touches_ = 0;
};

// All storms together; MASTWISE_STORM=100000 makes it a longer one.
int storm_touches() {
  if (const char* wanted = std::getenv("MASTWISE_STORM")) return std::max(1'000, std::atoi(wanted));
  return test::kSanitized ? 200 : 20'000;
}

// Half of the touches on all screens and prompts, for one hand.
void storm_of(bool left_handed) {
  constexpr std::array kPrompts{Asking::Raise,   Asking::Roof,       Asking::Weather,
                                Asking::Drive,   Asking::AfterAlarm, Asking::UndoRaise,
                                Asking::StillUp, Asking::Moving};
  const int all = storm_touches();
  const int each = all / static_cast<int>(kScreens.size() * 2 * kPrompts.size()) + 1;
  int touches = 0;
  unsigned seed = left_handed ? 1'000 : 1;
  for (const test::Screen& screen : kScreens) {
    Stage stage(screen);
    if (left_handed) stage.set(act::NextSetting{"left_handed"});
    for (const Asking prompt : kPrompts) {
      const bool up = prompt != Asking::Raise && prompt != Asking::Roof;
      // The storm before may have left one open.
      stage.set(act::OpenSheet{Sheet::None});
      stage.set(act::OpenGuide{Guide::None});
      if (up && stage.model().safety.antenna == Antenna::Down) raise_antenna(stage);
      Storm storm(stage, seed++);
      while (storm.touches() < each) {
        if (stage.model().safety.asking == Asking::Nothing) {
          stage.session().act(act::Ask{prompt});
          stage.round();
        }
        storm.blow();
        INFO(screen.name << ", prompt " << static_cast<int>(prompt) << ", seed " << seed - 1
                         << ", touch " << storm.touches());
        REQUIRE(stage.model().safety.antenna == (up ? Antenna::Raised : Antenna::Down));
        REQUIRE_FALSE(stage.model().safety.roof);
      }
      touches += storm.touches();
      stage.session().act(act::RefuseAsked{});
      stage.settle();
    }
  }
  CHECK(touches >= all / 2);
}

}  // namespace

// Two cases, for two processors.
TEST_CASE("random touches on all screens pass no prompt: right hand") {
  storm_of(false);
}

TEST_CASE("random touches on all screens pass no prompt: left hand") {
  storm_of(true);
}

TEST_CASE("going up says where one stands, coming down brings back what was said before") {
  Stage stage;
  const auto standing = [&] { return stage.model().stop.standing; };
  const auto go_up = [&] {
    stage.set(act::GoToRoof{});
    if (stage.model().safety.asking == Asking::Roof) stage.confirm();
    REQUIRE(stage.model().safety.roof);
    CHECK(standing() == Standing::on_roof);
  };
  Stop stop = stage.model().stop;
  stop.standing.reset();
  stage.set(act::SetStop{stop});
  go_up();
  // A second tap on the way up changes nothing.
  stage.set(act::GoToRoof{});
  stage.set(act::LeaveRoof{});
  CHECK_FALSE(standing());
  for (const Standing before : {Standing::well_clear, Standing::picnic_table, Standing::on_roof}) {
    stage.set(act::StandAt{before});
    go_up();
    stage.set(act::LeaveRoof{});
    CHECK(standing() == before);
    // Leaving a roof on which nobody is changes nothing.
    stage.set(act::StandAt{Standing::beside_rig});
    stage.set(act::LeaveRoof{});
    CHECK(standing() == Standing::beside_rig);
  }
}
