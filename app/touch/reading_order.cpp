#include "app/touch/reading_order.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <span>
#include <string>

namespace mastwise::touch {
namespace {

// Targets that are read together, in their order, and where they are.
struct Placed {
  std::vector<const Target*> targets;
  Rect box;
};

// Where to cut, and how wide the empty stripe there is.
struct Cut {
  std::size_t before = 0;
  float width = 0.0F;
};

// Sorts by one side and finds the widest stripe that no box touches; touching boxes have one of no
// width.
std::optional<Cut> widest_cut(std::span<Placed> all, float Rect::*from, float Rect::*to) {
  std::stable_sort(all.begin(), all.end(),
                   [&](const Placed& a, const Placed& b) { return a.box.*from < b.box.*from; });
  constexpr float kRounding_px = 0.5F;
  std::optional<Cut> widest;
  float reached = all.front().box.*to;
  for (std::size_t i = 1; i < all.size(); ++i) {
    const float width = all[i].box.*from - reached;
    if (width > -kRounding_px && (!widest || width > widest->width)) widest = Cut{i, width};
    reached = std::max(reached, all[i].box.*to);
  }
  return widest;
}

void order(std::span<Placed> all) {
  if (all.size() < 2) return;
  const auto across = widest_cut(all, &Rect::left, &Rect::right);
  const auto down = widest_cut(all, &Rect::top, &Rect::bottom);
  if (!across && !down) {
    std::stable_sort(all.begin(), all.end(), [](const Placed& a, const Placed& b) {
      return a.box.top != b.box.top ? a.box.top < b.box.top : a.box.left < b.box.left;
    });
    return;
  }
  const bool columns = across && (!down || across->width > down->width);
  const Cut cut = columns ? *widest_cut(all, &Rect::left, &Rect::right) : *down;
  order(all.subspan(0, cut.before));
  order(all.subspan(cut.before));
}

std::vector<const Target*> ordered(std::vector<Placed> placed) {
  order(placed);
  std::vector<const Target*> all;
  for (const Placed& one : placed) all.insert(all.end(), one.targets.begin(), one.targets.end());
  return all;
}

// What scrolls in one view keeps its order while it scrolls: as it would lie without a clip.
Placed view_of(const std::vector<const Target*>& scrolled) {
  std::vector<Placed> rows;
  std::vector<const Target*> all;
  std::optional<Rect> box;
  for (const Target* target : scrolled) {
    if (target->for_keys == Target::ForKeys::Page) {
      all.push_back(target);
    } else {
      rows.push_back({{target}, target->rect_px});
    }
    if (!box) box = target->clip_px.value_or(target->rect_px);
  }
  for (const Target* target : ordered(std::move(rows))) all.push_back(target);
  return {std::move(all), box.value_or(Rect{})};
}

bool holds(const Target& field, const std::vector<const Target*>& targets) {
  return std::any_of(targets.begin(), targets.end(), [&](const Target* target) {
    return target != &field && field.rect_px.contains(target->rect_px.center());
  });
}

}  // namespace

void into_reading_order(std::vector<const Target*>& targets) {
  std::map<std::string, std::vector<const Target*>> scrolled;
  std::vector<Placed> placed;
  std::vector<const Target*> holders;
  for (const Target* target : targets) {
    if (!target->scrolls_in.empty()) {
      scrolled[target->scrolls_in].push_back(target);
    } else if (target->for_keys != Target::ForKeys::No && holds(*target, targets)) {
      holders.push_back(target);
    } else {
      placed.push_back({{target}, target->rect_px});
    }
  }
  for (const auto& [view, within] : scrolled) placed.push_back(view_of(within));
  targets = ordered(std::move(placed));
  for (const Target* holder : holders) {
    const auto held = std::find_if(targets.begin(), targets.end(), [&](const Target* target) {
      return holder->rect_px.contains(target->rect_px.center());
    });
    targets.insert(held, holder);
  }
}

}  // namespace mastwise::touch
