#include "core/propagation/p1812/inverse_normal.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::p1812 {

namespace {

// Attachment 2, for x within [0.000001, 0.5].
double upper_half(double x) {
  const double t = std::sqrt(-2.0 * std::log(x));  // T(x)
  const double numerator = (0.010328 * t + 0.802853) * t + 2.515516698;
  const double denominator = ((0.001308 * t + 0.189269) * t + 1.432788) * t + 1.0;
  return t - numerator / denominator;  // T(x) - xi(x)
}

}  // namespace

double inverse_normal(double exceeded) {
  const double x = std::clamp(exceeded, 1e-6, 1.0 - 1e-6);
  return x <= 0.5 ? upper_half(x) : -upper_half(1.0 - x);
}

}  // namespace mastwise::p1812
