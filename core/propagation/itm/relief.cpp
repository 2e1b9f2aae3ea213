#include "core/propagation/itm/relief.hpp"

#include <algorithm>

namespace mastwise::itm {
namespace {

constexpr std::size_t kLanes = 4;

// Fixed independent lanes.
struct Lanes {
  std::array<double, kLanes> highest_m;
  std::array<double, kLanes> lowest_m;
  std::array<double, kLanes> sum_m;
};

double higher(double a, double b) {
  return a > b ? a : b;
}
double lower(double a, double b) {
  return a < b ? a : b;
}

void take(Lanes& lanes, const double* heights_m) {
  for (std::size_t i = 0; i < kLanes; ++i) {
    lanes.highest_m[i] = higher(heights_m[i], lanes.highest_m[i]);
    lanes.lowest_m[i] = lower(heights_m[i], lanes.lowest_m[i]);
    lanes.sum_m[i] += heights_m[i];
  }
}

}  // namespace

Relief relief(std::span<const double> heights_m) {
  constexpr std::size_t kSmallestBlock = 16;
  Relief result;
  const std::size_t needed = (heights_m.size() + Relief::kMostBlocks - 1) / Relief::kMostBlocks;
  result.block_size = std::max(kSmallestBlock, (needed + kLanes - 1) / kLanes * kLanes);
  result.blocks = 0;
  const double first = heights_m.front();
  Lanes lanes = {{}, {first, first, first, first}, {}};
  for (std::size_t begin = 0; begin < heights_m.size(); begin += result.block_size) {
    const std::size_t end = std::min(begin + result.block_size, heights_m.size());
    lanes.highest_m.fill(heights_m[begin]);
    std::size_t i = begin;
    for (; i + kLanes <= end; i += kLanes) take(lanes, heights_m.data() + i);
    for (; i < end; ++i) {
      lanes.highest_m[0] = higher(heights_m[i], lanes.highest_m[0]);
      lanes.lowest_m[0] = lower(heights_m[i], lanes.lowest_m[0]);
      lanes.sum_m[0] += heights_m[i];
    }
    const auto& highest = lanes.highest_m;
    result.highest_m[result.blocks++] =
        higher(higher(highest[0], highest[1]), higher(highest[2], highest[3]));
  }
  result.lowest_m =
      std::min({lanes.lowest_m[0], lanes.lowest_m[1], lanes.lowest_m[2], lanes.lowest_m[3]});
  result.sum_m = lanes.sum_m[0] + lanes.sum_m[1] + lanes.sum_m[2] + lanes.sum_m[3];
  return result;
}

}  // namespace mastwise::itm
