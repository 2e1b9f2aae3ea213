#pragma once

#include "core/gear/pattern.hpp"
#include "core/reception/chance_curve.hpp"

#include <vector>

namespace mastwise::reception {

// A pattern at every quarter degree, to look up a whole circle of headings at once. Straight
// between them: within 0.01 dB for beams from 10 degrees wide.
class PatternLookup {
 public:
  explicit PatternLookup(const gear::Pattern& pattern);

  // The response in dB toward `bearing` with the axis at each whole degree.
  ChanceCurve::Values response_db(Bearing<True> bearing) const;
  // The same as a ratio of powers.
  ChanceCurve::Values response(Bearing<True> bearing) const;

 private:
  std::vector<double> decibel_, ratio_;  // the last is the first again
};

}  // namespace mastwise::reception
