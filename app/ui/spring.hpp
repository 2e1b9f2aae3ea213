#pragma once

#include <cmath>

namespace mastwise::ui {

// A critically damped spring: x'' = -2 w x' - w^2 x, solved exactly for each step, so that the
// motion is the same at every frame rate. It comes within 1 % of its target in 200 ms.
class Spring {
 public:
  explicit Spring(double value) : value_(value), target_(value) {}

  void aim_at(double target) { target_ = target; }
  double value() const { return value_; }

  // Moves on; true while it still moves by more than `rest`.
  bool advance(double seconds, double rest = 0.02) {
    // (1 + w t) exp(-w t) = 0.01 at w t = 6.64.
    constexpr double kStiffness = 6.64 / 0.2;
    const double offset = value_ - target_;
    const double rate = velocity_ + kStiffness * offset;
    const double decay = std::exp(-kStiffness * seconds);
    value_ = target_ + (offset + rate * seconds) * decay;
    velocity_ = (velocity_ - kStiffness * rate * seconds) * decay;
    if (std::fabs(value_ - target_) > rest || std::fabs(velocity_) > rest) return true;
    value_ = target_;
    velocity_ = 0.0;
    return false;
  }

 private:
  double value_;
  double target_;
  double velocity_ = 0.0;
};

}  // namespace mastwise::ui
