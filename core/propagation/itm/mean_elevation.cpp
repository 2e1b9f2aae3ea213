#include "core/propagation/itm/terrain.hpp"

#include <array>
#include <cstddef>

namespace mastwise::itm {

double mean_elevation_m(std::span<const double> heights_m) {
  const std::size_t intervals = heights_m.size() - 1;
  const std::size_t tenth = intervals / 10;
  const auto middle = heights_m.subspan(tenth, heights_m.size() - 2 * tenth);

  // Fixed lanes let the compiler add several heights at once with a bit-identical sum.
  constexpr std::size_t kLanes = 8;
  std::array<double, kLanes> sums = {};
  const std::size_t whole = middle.size() / kLanes * kLanes;
  const double* heights = middle.data();
  for (std::size_t i = 0; i < whole; i += kLanes) {
    for (std::size_t lane = 0; lane < kLanes; ++lane) sums[lane] += heights[i + lane];
  }
  double total = 0;
  for (const double sum : sums) total += sum;
  for (std::size_t i = whole; i < middle.size(); ++i) total += middle[i];
  return total / static_cast<double>(middle.size());
}

}  // namespace mastwise::itm
