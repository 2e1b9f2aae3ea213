#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

// Every view by keys alone: what a finger can touch has the focus sooner or later, and it is in
// view then.
using namespace mastwise;
using test::Stage;
using test::View;

namespace {

std::set<std::string> touchable_now(const Stage& stage) {
  std::set<std::string> names;
  for (const touch::Target& target : stage.targets().all()) {
    if (target.enabled) names.insert(target.name);
  }
  return names;
}

// How much of a target is in view, 0 to 1.
float share_in_view(const touch::Target& target) {
  const touch::Rect seen = target.visible_px();
  if (seen.empty()) return 0.0f;
  const float whole = target.rect_px.width() * target.rect_px.height();
  return seen.width() * seen.height() / whole;
}

// What the focus never came to in one round, and what had it out of view.
struct Round {
  std::string never, out_of_view;
};
Round round_of(Stage& stage) {
  constexpr int kMost = 400;
  std::set<std::string> wanted = touchable_now(stage), had;
  Round round;
  stage.key(SDLK_TAB);
  const std::string first = stage.focused();
  for (int turns = 0; turns < kMost; ++turns) {
    const std::string name = stage.focused();
    if (turns > 0 && name == first) break;
    had.insert(name);
    const touch::Target* target = stage.targets().find(name);
    if (target != nullptr && share_in_view(*target) < 0.95f &&
        target->rect_px.height() <= stage.metrics().height_px / 2.0f) {
      round.out_of_view += "  \"" + name + "\"\n";
    }
    if (target != nullptr) wanted.insert(name);
    stage.key(SDLK_TAB);
  }
  for (const std::string& name : wanted) {
    // An import that ends meanwhile takes its button along.
    if (!had.contains(name) && stage.targets().find(name) != nullptr)
      round.never += "  \"" + name + "\"\n";
  }
  return round;
}

void check_views(const test::Screen& screen, std::size_t every, std::size_t number) {
  for (const View& view : test::views()) {
    if (number++ % every != 0) continue;
    Stage stage(screen);
    view.reach(stage);
    INFO(view.name << " on " << screen.name);
    if (touchable_now(stage).empty()) continue;
    const Round round = round_of(stage);
    CHECK(round.never == "");
    CHECK(round.out_of_view == "");
  }
}

// Which of a view's steps in the order of drawing go up and not to another column on the right.
std::string steps_against_reading(const Stage& stage) {
  std::string found;
  const touch::Target* before = nullptr;
  for (const touch::Target* target : stage.targets().focusable()) {
    if (target->for_keys != touch::Target::ForKeys::No) continue;
    if (target->visible_px().empty()) continue;
    if (before != nullptr) {
      const touch::Rect from = before->visible_px(), to = target->visible_px();
      const bool up = to.bottom <= from.top + 1.0f;
      const bool same_row = to.top < from.bottom - 1.0f && from.top < to.bottom - 1.0f;
      const bool to_right = to.center().x > from.right - 1.0f;
      const bool back = same_row && to.right <= from.left + 1.0f;
      // The sides of the rig go round, as a hand would paint them.
      const bool round = before->joined == "sides" && target->joined == "sides";
      // What is found comes after the keys that find it, whatever side it is on.
      const bool found_by_keys =
          before->name.starts_with("key ") && !target->name.starts_with("key ");
      // The columns of Ahead reach over the acts at the foot of their picture.
      const bool column = before->name.starts_with("place ahead ");
      if (!round && !found_by_keys && !column && ((up && !to_right) || back)) {
        found += "  \"" + before->name + "\" to \"" + target->name + "\"\n";
      }
    }
    before = target;
  }
  return found;
}

}  // namespace

TEST_CASE("keys reach every target of every view, and it is in view: 1280x800") {
  check_views(test::kTablet, test::kSanitized ? 29 : 1, 4);
}
TEST_CASE("keys reach every target of every view, and it is in view: 800x480") {
  check_views(test::kHeadUnit, test::kSanitized ? 31 : 2, 9);
}

TEST_CASE("the focus goes in the order of reading on every view") {
  std::size_t number = 3;
  for (const test::Screen& screen : {test::kTablet, test::kHeadUnit}) {
    for (const View& view : test::views()) {
      if (test::kSanitized && number++ % 9 != 0) continue;
      Stage stage(screen);
      view.reach(stage);
      INFO(view.name << " on " << screen.name);
      CHECK(steps_against_reading(stage) == "");
    }
  }
}
