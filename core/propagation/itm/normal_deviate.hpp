#pragma once

namespace mastwise::itm {

// The standard normal deviate exceeded with the given probability (above 0, below 1), by the
// model's rational approximation, accurate to 4.5e-4. Source: Abramowitz and Stegun, Handbook of
// Mathematical Functions, 26.2.23.
double normal_deviate(double probability);

}  // namespace mastwise::itm
