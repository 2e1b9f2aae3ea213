#pragma once

#include "core/reception/chance_curve.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace mastwise::test {

// A curve with straight sides: `peak` at `toward_deg`, falling by `fall` a degree to either side,
// to 0 at least; several peaks for an antenna with several lobes.
struct Tent {
  double toward_deg;
  double peak = 90.0;
  double fall = 2.0;
};

inline reception::ChanceCurve tents(std::initializer_list<Tent> each) {
  reception::ChanceCurve::Values values = {};
  for (std::size_t h = 0; h < values.size(); ++h) {
    for (const Tent& tent : each) {
      const double off_deg =
          std::fabs(fold_half_circle_deg(static_cast<double>(h) - tent.toward_deg));
      values[h] = std::max(values[h], tent.peak - tent.fall * off_deg);
    }
  }
  return {Bearing<True>::degrees(each.begin()->toward_deg), values};
}

inline reception::ChanceCurve tent(double toward_deg, double peak = 90.0, double fall = 2.0) {
  return tents({{toward_deg, peak, fall}});
}

// The same chance at every heading.
inline reception::ChanceCurve level(double percent, double toward_deg = 0.0) {
  reception::ChanceCurve::Values values;
  values.fill(percent);
  return {Bearing<True>::degrees(toward_deg), values};
}

}  // namespace mastwise::test
