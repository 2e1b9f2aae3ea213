#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace mastwise::itm {

// What one pass over a profile's heights tells: the highest of each stretch, by which a search may
// skip most of them, and whether all are heights at all.
struct Relief {
  static constexpr std::size_t kMostBlocks = 512;

  std::array<double, kMostBlocks> highest_m;  // of each block of block_size heights
  std::size_t block_size;                     // the last block may be shorter
  std::size_t blocks;
  double lowest_m;  // of all
  double sum_m;     // of all; no number where any is none
};

// `heights_m` has at least one height.
Relief relief(std::span<const double> heights_m);

}  // namespace mastwise::itm
