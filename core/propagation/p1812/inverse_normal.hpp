#pragma once

namespace mastwise::p1812 {

// The inverse complementary cumulative normal distribution I(x): the number of standard deviations
// that is exceeded with probability `exceeded`, within [0.000001, 0.999999]; values outside count
// as the nearer end. The rational approximation of attachment 2, good to 0.00054.
double inverse_normal(double exceeded);

}  // namespace mastwise::p1812
