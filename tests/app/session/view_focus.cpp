#include "tests/app/session/view_faults.hpp"

#include <set>

namespace mastwise::test {
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

}  // namespace

std::string focus_faults(Stage& stage) {
  constexpr int kMost = 400;
  std::set<std::string> wanted = touchable_now(stage), had;
  if (wanted.empty()) return {};
  std::string never, out_of_view;
  stage.key(SDLK_TAB);
  const std::string first = stage.focused();
  for (int turns = 0; turns < kMost; ++turns) {
    const std::string name = stage.focused();
    if (turns > 0 && name == first) break;
    had.insert(name);
    const touch::Target* target = stage.targets().find(name);
    if (target != nullptr && share_in_view(*target) < 0.95f &&
        target->rect_px.height() <= stage.metrics().height_px / 2.0f) {
      out_of_view += "  \"" + name + "\"\n";
    }
    if (target != nullptr) wanted.insert(name);
    stage.key(SDLK_TAB);
  }
  for (const std::string& name : wanted) {
    // An import that ends meanwhile takes its button along.
    if (!had.contains(name) && stage.targets().find(name) != nullptr)
      never += "  \"" + name + "\"\n";
  }
  return named("without the focus", never) + named("out of view with the focus", out_of_view);
}

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

}  // namespace mastwise::test
