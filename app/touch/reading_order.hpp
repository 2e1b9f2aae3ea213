#pragma once

#include "app/touch/targets.hpp"

#include <vector>

namespace mastwise::touch {

// Puts targets into the order of reading: the screen is cut at its widest empty stripe, across or
// down, and each part again; parts above and on the left come first. What cannot be cut goes by its
// top, then by its left side. What scrolls in one view stays together and keeps its order. A target
// for keys only comes before the first that it holds. (Recursive X-Y cut: Nagy and Seth, 1984; from
// memory.)
void into_reading_order(std::vector<const Target*>& targets);

}  // namespace mastwise::touch
