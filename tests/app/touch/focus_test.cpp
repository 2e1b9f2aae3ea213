#include "app/touch/focus.hpp"

#include <catch2/catch.hpp>

using namespace mastwise::touch;

namespace {

Targets frame_of(const std::vector<Target>& added) {
  Targets targets(6.0F);
  targets.begin_frame(1000.0F, 600.0F);
  for (const Target& target : added) targets.add(target);
  return targets;
}

// Two columns, the left one of a rail, and a wide button below the right one.
std::vector<Target> two_columns() {
  return {{"rail 1", {0, 0, 100, 100}},     {"rail 2", {0, 110, 100, 210}},
          {"rail 3", {0, 220, 100, 320}},   {"first", {200, 0, 400, 100}},
          {"second", {420, 0, 620, 100}},   {"third", {200, 110, 400, 210}},
          {"fourth", {420, 110, 620, 210}}, {"wide", {200, 220, 620, 320}}};
}

Target row(int number, float top) {
  return {.name = "row " + std::to_string(number),
          .rect_px = {200, top, 600, top + 50},
          .clip_px = Rect{200, 100, 600, 300},
          .scrolls_in = "list"};
}

Focus shown_on(const std::string& name, const Targets& targets) {
  Focus focus;
  focus.put_on(name);
  focus.show(targets);
  REQUIRE(focus.name() == name);
  return focus;
}

std::string after(const std::string& name, Key arrow, const Targets& targets) {
  Focus focus = shown_on(name, targets);
  focus.go(targets, arrow);
  return focus.name();
}

}  // namespace

TEST_CASE("the focus goes through the targets in the order of reading, and round at the ends") {
  const Targets targets = frame_of(two_columns());
  Focus focus;
  CHECK_FALSE(focus.shown());
  focus.show(targets);
  std::string order;
  for (int i = 0; i < 9; ++i) {
    order += focus.name() + ", ";
    focus.step(targets, 1);
  }
  CHECK(order == "rail 1, rail 2, rail 3, first, second, third, fourth, wide, rail 1, ");
  focus = shown_on("rail 1", targets);
  focus.step(targets, -1);
  CHECK(focus.name() == "wide");
}

TEST_CASE("disabled targets, lower layers and empty frames never have the focus") {
  std::vector<Target> added = two_columns();
  added[1].enabled = false;
  const Targets targets = frame_of(added);
  Focus focus = shown_on("rail 1", targets);
  focus.step(targets, 1);
  CHECK(focus.name() == "rail 3");

  added.push_back({.name = "prompt", .rect_px = {0, 400, 100, 500}, .layer = 1});
  const Targets covered = frame_of(added);
  focus.follow(covered);
  for (int i = 0; i < 10; ++i) {
    CHECK(focus.name() == "prompt");
    focus.step(covered, 1);
  }

  Focus none;
  none.show(frame_of({}));
  CHECK_FALSE(none.shown());
  none.step(frame_of({}), 1);
  CHECK_FALSE(none.go(frame_of({}), Key::Down));
}

TEST_CASE("an arrow goes to the nearest target in its direction") {
  const Targets targets = frame_of(two_columns());
  CHECK(after("rail 1", Key::Right, targets) == "first");
  CHECK(after("first", Key::Right, targets) == "second");
  CHECK(after("first", Key::Down, targets) == "third");
  CHECK(after("fourth", Key::Up, targets) == "second");
  CHECK(after("fourth", Key::Left, targets) == "third");
  CHECK(after("third", Key::Left, targets) == "rail 2");
  CHECK(after("second", Key::Down, targets) == "fourth");
  CHECK(after("fourth", Key::Down, targets) == "wide");
  CHECK(after("wide", Key::Left, targets) == "rail 3");
  // Nothing is there: it stays.
  CHECK(after("rail 1", Key::Up, targets) == "rail 1");
  CHECK(after("wide", Key::Down, targets) == "wide");
  CHECK_FALSE(shown_on("second", targets).go(targets, Key::Right));
}

TEST_CASE("what is straight ahead comes before what is nearer aside") {
  const Targets targets = frame_of(
      {{"from", {0, 0, 100, 100}}, {"ahead", {500, 0, 600, 100}}, {"aside", {120, 110, 220, 210}}});
  CHECK(after("from", Key::Right, targets) == "ahead");
  CHECK(after("aside", Key::Up, targets) == "from");
}

TEST_CASE("a row that is scrolled out is next for its list, and for nothing else") {
  const Targets targets = frame_of({{"above", {200, 0, 600, 90}},
                                    row(1, 40),
                                    row(2, 100),
                                    row(3, 150),
                                    row(4, 250),
                                    row(5, 300),
                                    {"below", {200, 310, 600, 400}}});
  CHECK(targets.all().size() == 5);
  CHECK(after("row 4", Key::Down, targets) == "row 5");
  CHECK(after("row 2", Key::Up, targets) == "row 1");
  CHECK(after("below", Key::Up, targets) == "row 4");
  CHECK(after("above", Key::Down, targets) == "row 2");
  Focus focus = shown_on("row 4", targets);
  focus.step(targets, 1);
  CHECK(focus.name() == "row 5");
}

TEST_CASE("the focus keeps to its target by name while others come and go") {
  std::vector<Target> added = two_columns();
  Focus focus = shown_on("third", frame_of(added));
  added.insert(added.begin() + 3, {"undo", {640, 0, 700, 100}});
  focus.follow(frame_of(added));
  CHECK(focus.name() == "third");
}

TEST_CASE("if the target is gone, the nearest in order has the focus") {
  std::vector<Target> added = two_columns();
  Focus focus = shown_on("third", frame_of(added));
  added.erase(added.begin() + 5);
  focus.follow(frame_of(added));
  CHECK(focus.name() == "fourth");

  focus = shown_on("wide", frame_of(added));
  added.pop_back();
  focus.follow(frame_of(added));
  CHECK(focus.name() == "fourth");
}

TEST_CASE("another screen begins at its first target, and the screen before is as it was left") {
  const Targets screen = frame_of(two_columns());
  const Targets sheet = frame_of({{"close", {0, 0, 100, 100}}, {"choice", {0, 110, 100, 210}}});
  Focus focus = shown_on("fourth", screen);
  focus.follow(sheet);
  CHECK(focus.name() == "close");
  focus.step(sheet, 1);
  focus.follow(screen);
  CHECK(focus.name() == "fourth");
  focus.follow(sheet);
  CHECK(focus.name() == "choice");
}

TEST_CASE("a hidden focus does not follow, and comes back where it was") {
  const Targets targets = frame_of(two_columns());
  Focus focus = shown_on("third", targets);
  focus.hide();
  focus.follow(frame_of({{"other", {0, 0, 100, 100}}}));
  CHECK(focus.name() == "third");
  focus.show(targets);
  CHECK(focus.name() == "third");
}
