#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace mastwise::itm {
namespace {

struct Moments {
  double sum = 0;       // of h_i
  double weighted = 0;  // of i h_i, i counted from 0
};

// Fixed lanes let the compiler add several heights at once with bit-identical sums.
Moments moments(std::span<const double> heights_m) {
  constexpr std::size_t kLanes = 8;
  std::array<double, kLanes> sums = {};
  std::array<double, kLanes> weighted = {};
  std::array<double, kLanes> indices = {0, 1, 2, 3, 4, 5, 6, 7};
  const std::size_t whole = heights_m.size() / kLanes * kLanes;
  const double* heights = heights_m.data();
  for (std::size_t i = 0; i < whole; i += kLanes) {
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
      sums[lane] += heights[i + lane];
      weighted[lane] += heights[i + lane] * indices[lane];
      indices[lane] += kLanes;
    }
  }
  Moments total;
  for (std::size_t lane = 0; lane < kLanes; ++lane) {
    total.sum += sums[lane];
    total.weighted += weighted[lane];
  }
  for (std::size_t i = whole; i < heights_m.size(); ++i) {
    total.sum += heights_m[i];
    total.weighted += heights_m[i] * static_cast<double>(i);
  }
  return total;
}

}  // namespace

Ends fitted_line(std::span<const double> heights_m, double from, double to) {
  const std::size_t intervals = heights_m.size() - 1;
  const auto last = static_cast<double>(intervals);
  // A position that rounding moved off its point still counts as that point.
  constexpr double kRounding = 1e-6;
  std::size_t begin = static_cast<std::size_t>(from + kRounding);
  std::size_t end = intervals - static_cast<std::size_t>(last - to + kRounding);
  if (begin >= end) {  // no whole interval within: use the neighbors on both sides
    begin = begin > 0 ? begin - 1 : 0;
    end = std::min(end + 1, intervals);
  }

  // The trapezoid rule: each end height counts half.
  const Moments inner = moments(heights_m.subspan(begin, end - begin + 1));
  const auto length = static_cast<double>(end - begin);
  const double half_ends = 0.5 * (heights_m[begin] + heights_m[end]);
  const double sum = inner.sum - half_ends;
  const double weighted = inner.weighted - 0.5 * length * heights_m[end];
  const double mean = sum / length;
  const double about_middle = weighted - 0.5 * length * sum;
  const double slope = 12 * about_middle / (length * (length * length + 2));
  const double middle = 0.5 * static_cast<double>(begin + end);
  return {mean - slope * middle, mean + slope * (last - middle)};
}

}  // namespace mastwise::itm
