#include "core/propagation/itm/normal_deviate.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::itm {

double normal_deviate(double probability) {
  constexpr double kSmallest = 1e-6;
  const double tail = std::max(std::min(probability, 1 - probability), kSmallest);
  const double t = std::sqrt(-2 * std::log(tail));
  const double magnitude = t - (2.515516698 + t * (0.802853 + t * 0.010328)) /
                                   (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  return probability <= 0.5 ? magnitude : -magnitude;
}

}  // namespace mastwise::itm
