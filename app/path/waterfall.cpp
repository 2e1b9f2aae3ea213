#include "app/path/waterfall.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {

std::vector<WaterfallRow> waterfall(const reception::SignalBudget& budget, std::size_t most) {
  constexpr double kLeastShown_db = 0.5;
  std::vector<double> sizes;
  for (const auto& step : budget.steps) sizes.push_back(std::fabs(step.decibel));
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  const auto shown = static_cast<std::size_t>(std::count_if(
      sizes.begin(), sizes.end(), [](double size) { return size >= kLeastShown_db; }));
  const bool some_left = shown < sizes.size() || shown > most;
  const std::size_t own = std::min(shown, some_left ? most - 1 : most);
  std::vector<WaterfallRow> rows;
  double level_db = budget.tower_db, rest_db = 0.0;
  for (const auto& step : budget.steps) {
    const bool large = own > 0 && std::fabs(step.decibel) >= sizes[own - 1];
    if (!large || rows.size() == own) {
      rest_db += step.decibel;
      continue;
    }
    rows.push_back({.step = step, .before_db = level_db, .after_db = level_db - step.decibel});
    level_db -= step.decibel;
  }
  const WaterfallRow rest{.before_db = level_db, .after_db = level_db - rest_db};
  if (std::fabs(rest_db) >= kLeastShown_db || rest.shown_db() != 0) rows.push_back(rest);
  return rows;
}

}  // namespace mastwise
