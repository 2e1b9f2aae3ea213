#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace mastwise::itm {

// Results of one pass over a profile's heights: the highest of each block, which lets a search skip
// most of them, and whether all heights are valid.
struct Relief {
  static constexpr std::size_t kMostBlocks = 512;

  std::array<double, kMostBlocks> highest_m;  // of each block of block_size heights
  std::size_t block_size;                     // the last block may be shorter
  std::size_t blocks;
  double lowest_m;  // of all
  double sum_m;     // of all; NaN if any height is NaN
};

// `heights_m` has at least one height.
Relief relief(std::span<const double> heights_m);

}  // namespace mastwise::itm
