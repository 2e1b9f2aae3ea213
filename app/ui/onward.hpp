#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::ui {

// The room that a row's chevron takes on its right.
inline constexpr float kChevron = 40.0f;

// A row that leads to another page: draws its chevron, and the row's ground while a finger is on
// it. The caller draws the rest afterwards, with the colors of lit_row.hpp. True when touched.
bool onward(Ui& ui, const std::string& name, Rect rect, const std::string& joined = {});

}  // namespace mastwise::ui
