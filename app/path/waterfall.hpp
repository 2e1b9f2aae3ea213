#pragma once

#include "core/reception/signal_budget.hpp"

#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

namespace mastwise {

// A row of the picture of where the signal went.
struct WaterfallRow {
  std::optional<reception::SignalStep> step = {};  // empty: all the small ones together
  double before_db = 0.0, after_db = 0.0;          // above what the TV needs
  double decibel() const { return before_db - after_db; }
  // In whole decibels, so that all rows of a picture add up to its whole margin.
  long shown_db() const { return std::lround(before_db) - std::lround(after_db); }
};

// At most `most` rows, at least 1: the steps that change most, in their order, and the rest of them
// as one row, unless that is nothing in whole decibels. A step under half a decibel always counts
// as rest.
std::vector<WaterfallRow> waterfall(const reception::SignalBudget& budget, std::size_t most);

}  // namespace mastwise
