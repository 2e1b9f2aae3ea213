#include "app/touch/targets.hpp"

#include "app/touch/reading_order.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include <fmt/format.h>

namespace mastwise::touch {
namespace {

// Places are sums of floats: less than this is rounding, not overlap.
constexpr float kRoundingPx = 0.01F;

// The gap between two that do not overlap, 0 if they touch.
Point space_between(const Rect& a, const Rect& b) {
  return {std::max({0.0F, b.left - a.right, a.left - b.right}),
          std::max({0.0F, b.top - a.bottom, a.top - b.bottom})};
}

bool leaves(const Rect& inner, const Rect& outer) {
  return inner.left < outer.left - kRoundingPx || inner.top < outer.top - kRoundingPx ||
         inner.right > outer.right + kRoundingPx || inner.bottom > outer.bottom + kRoundingPx;
}

}  // namespace

void Targets::begin_frame(float width_px, float height_px) {
  screen_px_ = {0.0F, 0.0F, width_px, height_px};
  targets_.clear();
  reachable_.clear();
  back_.clear();
}

// Keep a target without size, so that problems() can report it.
void Targets::add(Target target) {
  const bool scrolled_out = !target.rect_px.empty() && target.visible_px().empty();
  if (target.enabled) reachable_.push_back(target);
  if (!scrolled_out && target.for_keys == Target::ForKeys::No) {
    targets_.push_back(std::move(target));
  }
}

void Targets::only_to_hold(const std::string& name) {
  for (std::vector<Target>* all : {&targets_, &reachable_}) {
    if (!all->empty() && all->back().name == name) all->back().to_hold = true;
  }
}

int Targets::highest_layer() const {
  int highest = std::numeric_limits<int>::min();
  for (const Target& target : reachable_) highest = std::max(highest, target.layer);
  for (const Target& target : targets_) highest = std::max(highest, target.layer);
  return highest;
}

bool Targets::any_focusable() const {
  const int highest = highest_layer();
  return std::any_of(reachable_.begin(), reachable_.end(),
                     [&](const Target& target) { return target.layer == highest; });
}

std::vector<const Target*> Targets::focusable() const {
  const int highest = highest_layer();
  std::vector<const Target*> found;
  for (const Target& target : reachable_) {
    if (target.layer == highest) found.push_back(&target);
  }
  into_reading_order(found);
  return found;
}

const Target* Targets::find(std::string_view name) const {
  const auto found = std::find_if(targets_.begin(), targets_.end(),
                                  [&](const Target& target) { return target.name == name; });
  return found == targets_.end() ? nullptr : &*found;
}

const Target* Targets::at(Point place_px) const {
  const auto highest =
      std::max_element(targets_.begin(), targets_.end(),
                       [](const Target& a, const Target& b) { return a.layer < b.layer; });
  const auto found = std::find_if(targets_.begin(), targets_.end(), [&](const Target& target) {
    return target.layer == highest->layer && target.visible_px().contains(place_px);
  });
  return found == targets_.end() ? nullptr : &*found;
}

std::string Targets::described(const Target& target) const {
  return fmt::format("\"{}\" ({:.1f} x {:.1f} mm)", target.name, mm(target.rect_px.width()),
                     mm(target.rect_px.height()));
}

std::vector<std::string> Targets::problems(double min_mm, double gap_mm) const {
  std::vector<std::string> found;
  for (std::size_t i = 0; i < targets_.size(); ++i) {
    check_alone(targets_[i], min_mm, found);
    for (std::size_t j = i + 1; j < targets_.size(); ++j) {
      check_pair(targets_[i], targets_[j], gap_mm, found);
    }
  }
  return found;
}

void Targets::check_alone(const Target& target, double min_mm,
                          std::vector<std::string>& found) const {
  const double least_mm = min_mm - mm(kRoundingPx);
  // Written so that a NaN size is reported as well.
  const bool wide = mm(target.rect_px.width()) >= least_mm;
  const bool high = mm(target.rect_px.height()) >= least_mm;
  if (!wide || !high) {
    found.push_back(fmt::format("{} is smaller than {:.1f} mm in {}", described(target), min_mm,
                                wide   ? "height"
                                : high ? "width"
                                       : "width and height"));
  }
  if (leaves(target.visible_px(), screen_px_)) {
    found.push_back(fmt::format("{} leaves the screen of {:.1f} x {:.1f} mm", described(target),
                                mm(screen_px_.width()), mm(screen_px_.height())));
  }
}

void Targets::check_pair(const Target& first, const Target& second, double gap_mm,
                         std::vector<std::string>& found) const {
  if (first.name == second.name) {
    found.push_back(
        fmt::format("{} and {} have the same name", described(first), described(second)));
  }
  if (first.layer != second.layer) return;
  const Rect shared = first.visible_px().intersect(second.visible_px());
  if (shared.width() > kRoundingPx && shared.height() > kRoundingPx) {
    found.push_back(fmt::format("{} overlaps {} by {:.1f} x {:.1f} mm", described(first),
                                described(second), mm(shared.width()), mm(shared.height())));
    return;
  }
  if (!first.joined.empty() && first.joined == second.joined) return;
  const double apart_mm = mm(length(space_between(first.visible_px(), second.visible_px())));
  if (apart_mm < gap_mm - mm(kRoundingPx)) {
    found.push_back(fmt::format("{} is {:.1f} mm from {}, less than {:.1f} mm", described(first),
                                apart_mm, described(second), gap_mm));
  }
}

}  // namespace mastwise::touch
