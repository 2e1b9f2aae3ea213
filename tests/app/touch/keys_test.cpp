#include "app/touch/keys.hpp"

#include "app/touch/hold.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::touch;

namespace {

Monotonic at_ms(int ms) {
  return Monotonic{} + milliseconds(ms);
}

// A button, a field that keys steer, a page with more below, and the way back.
Targets screen() {
  Targets targets(6.0F);
  targets.begin_frame(1000.0F, 600.0F);
  targets.add({"button", {0, 0, 100, 100}});
  targets.add({.name = "field", .rect_px = {0, 120, 400, 300}, .for_keys = Target::ForKeys::Field});
  targets.add({.name = "scroll page",
               .rect_px = {0, 320, 400, 500},
               .scrolls_in = "page",
               .for_keys = Target::ForKeys::Page,
               .more_below = true});
  targets.add({"back", {500, 0, 600, 100}});
  targets.set_back("back");
  return targets;
}

// Keys with the focus on a target.
class Hand {
 public:
  explicit Hand(const std::string& name) {
    keys.wish_for({name});
    keys.follow(targets);
    REQUIRE(keys.focused(targets) != nullptr);
    REQUIRE(keys.focused(targets)->name == name);
  }
  std::optional<KeyAct> down(Key key, int ms) { return event(key, KeyEvent::Kind::Down, ms); }
  std::optional<KeyAct> repeat(Key key, int ms) { return event(key, KeyEvent::Kind::Repeat, ms); }
  std::optional<KeyAct> up(Key key, int ms) { return event(key, KeyEvent::Kind::Up, ms); }
  std::string focus() const { return keys.focused(targets)->name; }

  Targets targets = screen();
  Keys keys;

 private:
  std::optional<KeyAct> event(Key key, KeyEvent::Kind kind, int ms) {
    keys.feed({key, kind, at_ms(ms)});
    return keys.take(targets, at_ms(ms));
  }
};

}  // namespace

TEST_CASE("a press and a lift tap the focused target") {
  Hand hand("button");
  CHECK_FALSE(hand.down(Key::Press, 0));
  CHECK(hand.keys.press(hand.targets)->start_px == Point{50.0F, 50.0F});
  CHECK(hand.keys.press(hand.targets)->down_at == at_ms(0));
  const auto act = hand.up(Key::Press, 80);
  REQUIRE(act);
  CHECK(act->kind == KeyAct::Kind::Tap);
  CHECK(act->target == "button");
  CHECK(act->began == at_ms(0));
  CHECK_FALSE(hand.keys.press(hand.targets));
}

TEST_CASE("a repeat is not a press, and a second one below a held one neither") {
  Hand hand("button");
  for (int ms = 0; ms < 3000; ms += 30) {
    CHECK_FALSE(hand.repeat(Key::Press, ms));
    CHECK_FALSE(hand.keys.press(hand.targets));
    CHECK_FALSE(hand.repeat(Key::Back, ms));
  }
  CHECK_FALSE(hand.up(Key::Press, 3000));
  hand.down(Key::Press, 4000);
  hand.down(Key::Press, 4100);
  CHECK(hand.keys.press(hand.targets)->down_at == at_ms(4000));
}

TEST_CASE("a press of 0.6 s is a hold, and its lift is no tap") {
  Hand hand("button");
  hand.down(Key::Press, 0);
  CHECK(hand.keys.hold_due() == at_ms(600));
  CHECK_FALSE(hand.keys.take(hand.targets, at_ms(599)));
  const auto act = hand.keys.take(hand.targets, at_ms(600));
  REQUIRE(act);
  CHECK(act->kind == KeyAct::Kind::Hold);
  CHECK_FALSE(hand.keys.take(hand.targets, at_ms(700)));
  CHECK(hand.keys.press(hand.targets));
  CHECK_FALSE(hand.up(Key::Press, 900));
}

TEST_CASE("moving on while a press is held lifts it") {
  Hand hand("button");
  hand.down(Key::Press, 0);
  hand.down(Key::Next, 100);
  CHECK(hand.focus() == "field");
  CHECK_FALSE(hand.keys.press(hand.targets));
  CHECK_FALSE(hand.up(Key::Press, 200));
}

TEST_CASE("the first key after a finger only shows the focus") {
  Hand hand("button");
  hand.keys.hide();
  CHECK(hand.keys.focused(hand.targets) == nullptr);
  CHECK_FALSE(hand.down(Key::Press, 0));
  CHECK_FALSE(hand.up(Key::Press, 80));
  CHECK(hand.focus() == "button");
  hand.keys.hide();
  hand.down(Key::Next, 200);
  CHECK(hand.focus() == "button");
  hand.repeat(Key::Next, 300);
  CHECK(hand.focus() == "field");
}

TEST_CASE("Back taps the way back, also with a hidden focus") {
  Hand hand("button");
  hand.keys.hide();
  const auto act = hand.down(Key::Back, 10);
  REQUIRE(act);
  CHECK(act->target == "back");
  CHECK(act->began == at_ms(10));
}

TEST_CASE("a field takes arrows and turns after a press, until Back") {
  Hand hand("field");
  hand.down(Key::Press, 0);
  CHECK_FALSE(hand.up(Key::Press, 80));
  CHECK(hand.keys.steered() == "field");
  for (const Key key : {Key::Left, Key::Down, Key::Next, Key::Previous}) {
    const auto act = hand.down(key, 200);
    REQUIRE(act);
    CHECK(act->kind == KeyAct::Kind::Steer);
    CHECK(act->key == key);
    CHECK(hand.focus() == "field");
  }
  hand.down(Key::Press, 300);
  CHECK(hand.up(Key::Press, 380)->kind == KeyAct::Kind::Tap);
  CHECK_FALSE(hand.down(Key::Back, 500));
  CHECK(hand.keys.steered().empty());
  hand.down(Key::Next, 600);
  CHECK(hand.focus() == "scroll page");
}

TEST_CASE("a page without targets scrolls by arrows and by presses") {
  Hand hand("scroll page");
  auto act = hand.down(Key::Down, 0);
  REQUIRE(act);
  CHECK(act->kind == KeyAct::Kind::Scroll);
  CHECK(act->target == "page");
  CHECK(act->views > 0.0F);
  hand.down(Key::Press, 100);
  act = hand.up(Key::Press, 180);
  REQUIRE(act);
  CHECK(act->views == Approx(0.8));
  act = hand.down(Key::PageUp, 300);
  REQUIRE(act);
  CHECK(act->views == Approx(-0.8));
  // Nothing is above: the arrow leads out of it.
  CHECK_FALSE(hand.down(Key::Up, 400));
  CHECK(hand.focus() == "field");
}

TEST_CASE("keys do nothing where there is nothing, and do not wait for it") {
  Hand hand("button");
  Targets nothing(6.0F);
  nothing.begin_frame(1000.0F, 600.0F);
  hand.keys.feed({Key::Press, KeyEvent::Kind::Down, at_ms(0)});
  CHECK_FALSE(hand.keys.take(nothing, at_ms(0)));
  CHECK_FALSE(hand.keys.waiting());
}

TEST_CASE("a held press confirms a prompt only after its rest and its whole time") {
  const auto held_for = [](int from_ms, int to_ms) {
    Hand hand("button");
    Hold hold(at_ms(0));
    bool confirmed = false;
    for (int ms = 0; ms <= 5000; ms += 16) {
      if (ms >= from_ms && ms < from_ms + 16) hand.down(Key::Press, ms);
      if (ms >= from_ms + 500 && ms < to_ms) hand.repeat(Key::Press, ms);
      if (ms >= to_ms && ms < to_ms + 16) hand.up(Key::Press, ms);
      hand.keys.take(hand.targets, at_ms(ms));
      const auto press = hand.keys.press(hand.targets);
      confirmed |= hold.advance(at_ms(ms), press ? std::optional(press->down_at) : std::nullopt);
    }
    return confirmed;
  };
  CHECK_FALSE(held_for(0, 4000));     // it began before the prompt was at rest
  CHECK_FALSE(held_for(640, 4000));   // the same
  CHECK_FALSE(held_for(1008, 1700));  // too short
  CHECK(held_for(1008, 1900));
}
