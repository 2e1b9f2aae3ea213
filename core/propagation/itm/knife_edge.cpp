#include "core/propagation/itm/knife_edge.hpp"

#include "core/propagation/itm/decibel.hpp"

#include <cmath>

namespace mastwise::itm {

double knife_edge_db(double v_squared) {
  constexpr double kAsymptoteFrom = 2.4 * 2.4;
  if (v_squared < kAsymptoteFrom) {
    return 6.02 + 9.11 * std::sqrt(v_squared) - 1.27 * v_squared;  // (6.1), v to 2.40
  }
  return 12.953 + decibel(v_squared);  // (6.1), above
}

}  // namespace mastwise::itm
