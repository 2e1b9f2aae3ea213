#pragma once

#include "app/touch/geometry.hpp"

#include <algorithm>

namespace mastwise::ui {

// A row of acts, given away from the side of the acting thumb.
class ActRow {
 public:
  static constexpr float kHeight = 72.0f, kGap = 16.0f;

  ActRow(touch::Rect row, bool left_handed) : row_(row), left_handed_(left_handed) {}

  // The next act's rectangle; what is left may be narrower.
  touch::Rect next(float width) {
    width = std::min(width, row_.width());
    touch::Rect act = row_;
    if (left_handed_) {
      act.right = act.left + width;
      row_.left = act.right + kGap;
    } else {
      act.left = act.right - width;
      row_.right = act.left - kGap;
    }
    return act;
  }
  touch::Rect rest() const { return row_; }

 private:
  touch::Rect row_;
  bool left_handed_;
};

}  // namespace mastwise::ui
