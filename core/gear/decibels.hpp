#pragma once

#include <cmath>

namespace mastwise::gear {

// Power ratios.
inline double to_db(double ratio) {
  return 10.0 * std::log10(ratio);
}
inline double from_db(double decibels) {
  return std::pow(10.0, decibels / 10.0);
}

}  // namespace mastwise::gear
