#include "core/reception/best_spots.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::reception {
namespace {

constexpr int kUnknown = -1;

// Walks the connected regions of cells with the same displayed percentage.
class Fields {
 public:
  Fields(const AreaGrid& grid, const ChanceMap& chances) : grid_(grid), seen_(chances.size()) {
    shown_.reserve(chances.size());
    for (const auto& chance : chances) {
      shown_.push_back(chance ? static_cast<int>(std::lround(*chance)) : kUnknown);
    }
  }

  int shown(std::size_t cell) const { return shown_[cell]; }

  // The cell nearest to the stop of the unvisited region around `start`; std::nullopt if a neighbor
  // exceeds the region, or if it is entirely outside the radius.
  std::optional<std::size_t> walk(std::size_t start);
  bool walked(std::size_t cell) const { return seen_[cell]; }

 private:
  template <class Visit>
  void visit_neighbors(std::size_t cell, Visit visit) const;

  const AreaGrid& grid_;
  std::vector<int> shown_;
  std::vector<bool> seen_;
  std::vector<std::size_t> open_;
};

template <class Visit>
void Fields::visit_neighbors(std::size_t cell, Visit visit) const {
  const std::size_t side = grid_.side();
  const std::size_t row = cell / side;
  const std::size_t column = cell % side;
  for (std::size_t r = row - (row > 0 ? 1 : 0); r <= std::min(row + 1, side - 1); ++r) {
    for (std::size_t c = column - (column > 0 ? 1 : 0); c <= std::min(column + 1, side - 1); ++c) {
      if (r != row || c != column) visit(r * side + c);
    }
  }
}

std::optional<std::size_t> Fields::walk(std::size_t start) {
  const int here = shown_[start];
  std::optional<std::size_t> nearest;
  double nearest_m = grid_.radius_m();
  bool exceeded = false;
  open_.assign(1, start);
  seen_[start] = true;
  while (!open_.empty()) {
    const std::size_t cell = open_.back();
    open_.pop_back();
    const double distance_m = grid_.distance_m(cell);
    if (distance_m <= nearest_m) {
      nearest_m = distance_m;
      nearest = cell;
    }
    visit_neighbors(cell, [&](std::size_t beside) {
      exceeded |= shown_[beside] > here;
      if (shown_[beside] != here || seen_[beside]) return;
      seen_[beside] = true;
      open_.push_back(beside);
    });
  }
  return exceeded ? std::nullopt : nearest;
}

bool apart(const AreaGrid& grid, const Spot& one, const Spot& other, double apart_m) {
  return std::hypot(grid.east_m(one.cell) - grid.east_m(other.cell),
                    grid.north_m(one.cell) - grid.north_m(other.cell)) >= apart_m;
}

}  // namespace

std::optional<double> chance_at_stop(const AreaGrid& grid, const ChanceMap& chances) {
  const std::size_t half = grid.side() / 2;
  const std::size_t first = half - (grid.side() % 2 == 0 ? 1 : 0);
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t row = first; row <= half; ++row) {
    for (std::size_t column = first; column <= half; ++column) {
      const auto& chance = chances[row * grid.side() + column];
      if (!chance) return std::nullopt;
      sum += *chance;
      count += 1.0;
    }
  }
  return sum / count;
}

std::vector<Spot> best_spots(const AreaGrid& grid, const ChanceMap& chances, double here_percent,
                             const SpotRules& rules) {
  Fields fields(grid, chances);
  std::vector<Spot> found;
  for (std::size_t cell = 0; cell < chances.size(); ++cell) {
    if (fields.shown(cell) == kUnknown || fields.walked(cell)) continue;
    const auto top = fields.walk(cell);
    if (!top) continue;
    const double gain = *chances[*top] - here_percent;
    if (gain < rules.least_gain_percent) continue;
    found.push_back({.cell = *top,
                     .distance_m = grid.distance_m(*top),
                     .bearing = grid.bearing(*top),
                     .chance_percent = *chances[*top],
                     .gain_percent = gain});
  }
  // The stop is never better than itself, so a distance of 0 can only come from the coarse grid.
  const auto worth = [&](const Spot& spot) {
    return spot.gain_percent / std::max(spot.distance_m, grid.cell_m());
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const Spot& a, const Spot& b) { return worth(a) > worth(b); });
  std::vector<Spot> best;
  for (const Spot& spot : found) {
    if (best.size() == rules.most) break;
    const bool alone = std::all_of(best.begin(), best.end(), [&](const Spot& other) {
      return apart(grid, spot, other, rules.apart_m);
    });
    if (alone) best.push_back(spot);
  }
  return best;
}

}  // namespace mastwise::reception
