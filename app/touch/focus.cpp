#include "app/touch/focus.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <tuple>

namespace mastwise::touch {
namespace {

using Places = std::vector<const Target*>;

bool has(const Places& there, const std::string& name) {
  return std::any_of(there.begin(), there.end(),
                     [&](const Target* target) { return target->name == name; });
}

// The rectangle turned so that the arrow points right.
Rect turned(const Rect& rect, Key arrow) {
  switch (arrow) {
    case Key::Left:
      return {-rect.right, rect.top, -rect.left, rect.bottom};
    case Key::Up:
      return {-rect.bottom, rect.left, -rect.top, rect.right};
    case Key::Down:
      return {rect.top, rect.left, rect.bottom, rect.right};
    default:
      return rect;
  }
}

// How far a target is from another to its left; the smallest is the nearest. First what lies
// straight ahead, then what lies wholly beyond, where a step aside counts twice (common practice of
// spatial navigation, no source).
struct Way {
  int aside = 0;
  float far_px = 0.0F;
  float off_px = 0.0F;
  bool operator<(const Way& other) const {
    return std::tie(aside, far_px, off_px) < std::tie(other.aside, other.far_px, other.off_px);
  }
};

constexpr float kAsideCounts = 2.0F;

std::optional<Way> way_to(const Rect& from, const Rect& to) {
  const float ahead = std::max(0.0F, to.left - from.right);
  const float aside = std::max({0.0F, to.top - from.bottom, from.top - to.bottom});
  const bool beside = to.bottom <= from.top || to.top >= from.bottom;
  if (to.center().x <= from.center().x) return std::nullopt;
  const float off = distance(from.center(), to.center());
  if (!beside) return Way{0, ahead, off};
  constexpr float kRoundingPx = 0.5F;
  if (to.left < from.right - kRoundingPx) return std::nullopt;
  return Way{1, ahead + kAsideCounts * aside, off};
}

// Where the focus begins on a screen: not on what passes a prompt.
const std::string& first_of(const std::vector<const Target*>& there) {
  const auto found = std::find_if(there.begin(), there.end(),
                                  [](const Target* target) { return !target->to_hold; });
  return (found == there.end() ? there.front() : *found)->name;
}

}  // namespace

std::size_t Focus::place_in(const Places& there) const {
  const auto found = std::find_if(there.begin(), there.end(),
                                  [&](const Target* target) { return target->name == name_; });
  return static_cast<std::size_t>(found - there.begin());
}

const Target* Focus::on(const Targets& targets) const {
  const Places there = targets.focusable();
  const std::size_t place = place_in(there);
  return place < there.size() ? there[place] : nullptr;
}

void Focus::show(const Targets& targets) {
  const Places there = targets.focusable();
  if (there.empty()) return;
  shown_ = true;
  if (place_in(there) == there.size()) name_ = first_of(there);
  follow(targets);
}

void Focus::step(const Targets& targets, int by) {
  const Places there = targets.focusable();
  if (there.empty()) return;
  const auto count = static_cast<int>(there.size());
  const auto place = static_cast<int>(place_in(there));
  const int to = place == count ? 0 : ((place + by) % count + count) % count;
  name_ = there[static_cast<std::size_t>(to)]->name;
}

bool Focus::go(const Targets& targets, Key arrow) {
  const Target* from = on(targets);
  if (from == nullptr) return false;
  const Target* nearest = nullptr;
  Way least;
  for (const Target* to : targets.focusable()) {
    if (to == from) continue;
    // Rows that are scrolled out are beyond the edge only for the rows of their own list.
    const bool same_list = !to->scrolls_in.empty() && to->scrolls_in == from->scrolls_in;
    const Rect place = same_list ? to->rect_px : to->visible_px();
    if (place.empty()) continue;
    const Rect start = same_list ? from->rect_px : from->visible_px();
    const auto way = way_to(turned(start, arrow), turned(place, arrow));
    if (!way || (nearest != nullptr && !(*way < least))) continue;
    nearest = to;
    least = *way;
  }
  if (nearest == nullptr) return false;
  name_ = nearest->name;
  return true;
}

void Focus::remember() {
  constexpr std::size_t kMost = 16;
  std::erase(left_, name_);
  left_.push_back(name_);
  if (left_.size() > kMost) left_.erase(left_.begin());
}

std::string Focus::instead(const Places& there) const {
  const auto kept = std::count_if(order_.begin(), order_.end(),
                                  [&](const std::string& name) { return has(there, name); });
  const bool same_screen = 2 * static_cast<std::size_t>(kept) >= order_.size() && kept > 0;
  const auto at = std::find(order_.begin(), order_.end(), name_);
  if (same_screen && at != order_.end()) {
    const auto place = at - order_.begin(), count = static_cast<std::ptrdiff_t>(order_.size());
    for (std::ptrdiff_t away = 1; away < count; ++away) {
      for (const std::ptrdiff_t near : {place + away, place - away}) {
        if (near < 0 || near >= count) continue;
        const std::string& name = order_[static_cast<std::size_t>(near)];
        if (has(there, name)) return name;
      }
    }
  }
  const auto before = std::find_if(left_.rbegin(), left_.rend(),
                                   [&](const std::string& name) { return has(there, name); });
  return before == left_.rend() ? first_of(there) : *before;
}

void Focus::follow(const Targets& targets) {
  if (!shown_) return;
  const Places there = targets.focusable();
  if (there.empty()) return;
  if (place_in(there) == there.size()) {
    const std::string next = instead(there);
    remember();
    name_ = next;
  }
  order_.clear();
  for (const Target* target : there) order_.push_back(target->name);
}

}  // namespace mastwise::touch
