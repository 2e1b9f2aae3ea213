#pragma once

#include "core/reception/chance_curve.hpp"

#include <vector>

namespace mastwise::reception {

// Means over a heading error, normal and wrapped around the circle, of values at whole degrees.
class CircleAverage {
 public:
  // 0 to 180 degrees. Errors beyond 4.5 deviations, 7 in a million, are ignored. The weights are
  // the density at whole degrees, which keeps its deviation from 0.7 degrees upward; below that,
  // averaging fades out.
  explicit CircleAverage(double deviation_deg);

  ChanceCurve::Values operator()(const ChanceCurve::Values& values) const;

 private:
  std::vector<double> weights_;  // by the size of the error in degrees
};

}  // namespace mastwise::reception
