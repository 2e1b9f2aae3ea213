#pragma once

#include "app/ahead/state.hpp"
#include "app/ui/ui.hpp"

#include <cstddef>
#include <optional>
#include <vector>

// Where the columns of places and the axis of distance lie.
namespace mastwise::screens::ahead_page {

// The columns shown, from left to right.
struct Columns {
  std::size_t first = 0;          // index of the first shown column
  std::vector<ui::Rect> boxes{};  // one for each shown column
  float axis_left = 0.0f, axis_right = 0.0f;
  double from_km = 0.0, to_km = 0.0;  // of the axis

  bool pages(std::size_t all) const { return boxes.size() < all; }
  // A distance along the way on the axis, kept within it.
  float at(double km) const;
};

// As many columns as fit, from the wished one on, else up to the chosen one, which is wider. Each
// stands at its distance as far as the others leave room.
Columns columns_in(ui::Rect area, const AheadFound& found, std::optional<std::size_t> wished_first);

}  // namespace mastwise::screens::ahead_page
