#pragma once

#include "app/look/theme.hpp"

#include <cstddef>

namespace mastwise::ui {

inline constexpr std::size_t kChanceSegments = 5;

// Colors of the five classes of a chance, dark to light by day and night, which color-blind eyes
// can order. Source of the ramp: cividis (Nuñez, Anderton and Renslow 2018,
// doi 10.1371/journal.pone.0199239), sampled at 0, 1/4, 1/2, 3/4 and 1, figures from memory.
Color chance_color(std::size_t segment, Look look);

// A ramp without steps, for pictures: 0 to 100 percent. By night that of the day.
Color chance_shade(double percent, Look look = Look::Day);

}  // namespace mastwise::ui
