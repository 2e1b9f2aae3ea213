#include "core/propagation/p1812/knife_edge.hpp"

#include <cmath>

namespace mastwise::p1812 {

double knife_edge_loss_db(double v) {
  if (v <= -0.78) return 0.0;
  const double shifted = v - 0.1;
  return 6.9 + 20.0 * std::log10(std::sqrt(shifted * shifted + 1.0) + shifted);  // (12)
}

}  // namespace mastwise::p1812
