#pragma once

#include <cmath>

namespace mastwise::gear {

// Power ratios. The natural logarithm and exponential cost a third of those to the base of ten.
inline constexpr double kPerNeper_db = 4.342944819032518;
inline double to_db(double ratio) {
  return kPerNeper_db * std::log(ratio);
}
inline double from_db(double decibels) {
  return std::exp(decibels / kPerNeper_db);
}

}  // namespace mastwise::gear
