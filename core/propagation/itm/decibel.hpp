#pragma once

#include <cmath>

namespace mastwise::itm {

// 10 log10 of a power ratio above 0; the natural logarithm halves the cost.
inline double decibel(double power_ratio) {
  constexpr double kPerNeper = 4.342944819032518;
  return kPerNeper * std::log(power_ratio);
}

}  // namespace mastwise::itm
