#include "app/ahead/draw_layout.hpp"

#include <algorithm>

namespace mastwise::screens::ahead_page {
namespace {

using ui::Rect;

constexpr float kLeastChosen = 248.0f, kMostChosen = 364.0f, kOther = 152.0f, kMostOther = 216.0f,
                kGap = 16.0f;

// Another column has room beside it.
float chosen_width(float room) {
  return std::min(room, std::clamp(room - kOther - kGap, kLeastChosen, kMostChosen));
}

std::size_t fitting(float room, std::size_t all) {
  const float others = (room - chosen_width(room)) / (kOther + kGap);
  const auto count = 1 + static_cast<std::size_t>(std::max(0.0f, others));
  return std::clamp<std::size_t>(count, 1, std::max<std::size_t>(1, all));
}

}  // namespace

float Columns::at(double km) const {
  if (to_km <= from_km) return axis_left;
  const double part = std::clamp((km - from_km) / (to_km - from_km), 0.0, 1.0);
  return axis_left + static_cast<float>(part) * (axis_right - axis_left);
}

Columns columns_in(Rect area, const AheadFound& found, std::optional<std::size_t> wished_first) {
  Columns shown;
  const std::size_t all = found.columns.size();
  if (all == 0) return shown;
  const std::size_t count = fitting(area.width(), all);
  const std::size_t to_chosen = found.chosen + 1 > count ? found.chosen + 1 - count : 0;
  shown.first = std::min(wished_first.value_or(to_chosen), all - count);
  const std::size_t last = shown.first + count - 1;
  const bool has_chosen = found.chosen >= shown.first && found.chosen <= last;
  const float chosen = has_chosen ? chosen_width(area.width()) : 0.0f;
  const auto others = static_cast<float>(count - (has_chosen ? 1 : 0));
  const float room = area.width() - chosen - kGap * static_cast<float>(count - 1);
  const float other = others > 0.0f ? std::min(kMostOther, room / others) : 0.0f;
  const auto width = [&](std::size_t i) {
    return shown.first + i == found.chosen ? chosen : other;
  };

  shown.from_km = found.columns[shown.first].at_km;
  shown.to_km = found.columns[last].at_km;
  shown.axis_left = area.left + width(0) / 2.0f;
  shown.axis_right = count > 1 ? area.right - width(count - 1) / 2.0f : shown.axis_left;
  float left = area.left;
  for (std::size_t i = 0; i < count; ++i) {
    const float wished = shown.at(found.columns[shown.first + i].at_km) - width(i) / 2.0f;
    left = std::max(left, wished);
    shown.boxes.push_back({left, area.top, left + width(i), area.bottom});
    left += width(i) + kGap;
  }
  // What stands too far right moves back.
  float right = area.right;
  for (std::size_t i = count; i-- > 0;) {
    Rect& box = shown.boxes[i];
    const float back = std::max(0.0f, box.right - right);
    box.left -= back;
    box.right -= back;
    right = box.left - kGap;
  }
  return shown;
}

}  // namespace mastwise::screens::ahead_page
