#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>

namespace mastwise::test {

// Random numbers equal on every machine, unlike the standard library's distributions.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}

  // SplitMix64 [Steele, Lea, Flood, OOPSLA 2014].
  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31);
  }
  double uniform() { return static_cast<double>(bits() >> 11) * 0x1p-53; }  // [0, 1)
  double between(double low, double high) { return low + (high - low) * uniform(); }
  std::size_t below(std::size_t count) {
    return static_cast<std::size_t>(uniform() * static_cast<double>(count));
  }
  // Mean 0, deviation 1 [Box and Muller 1958].
  double normal() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  std::uint64_t state_;
};

}  // namespace mastwise::test
