#pragma once

namespace mastwise::p1812 {

// The inverse complementary cumulative normal distribution I(x): the number of standard deviations
// exceeded with probability `exceeded`, clamped to [0.000001, 0.999999]. The rational approximation
// of attachment 2, accurate to 0.00054.
double inverse_normal(double exceeded);

}  // namespace mastwise::p1812
