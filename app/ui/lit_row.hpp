#pragma once

#include "app/look/theme.hpp"

// Text colors of a row that is lit because a finger is on it or it is chosen: ink, because neither
// second ink nor the accent nor the warning keeps 7:1 on the lobe color.
namespace mastwise::ui {

inline Color second_ink_on_row(const Theme& theme, bool lit) {
  return lit ? theme.ink : theme.second_ink;
}

inline Color accent_on_row(const Theme& theme, bool lit) {
  return lit ? theme.ink : theme.accent;
}

inline Color warning_on_row(const Theme& theme, bool lit) {
  return lit ? theme.ink : theme.warning;
}

}  // namespace mastwise::ui
