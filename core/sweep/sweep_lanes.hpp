#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>

// Arithmetic for several neighboring peaks at once, in a form that compilers vectorize: no
// branches, no calls that may set errno.
namespace mastwise::aim {

inline constexpr std::size_t kLanes = 8;
using Lanes = std::array<float, kLanes>;

// ln by the series of atanh((m - 1) / (m + 1)) with m within sqrt(1/2) and sqrt(2), error below
// 1e-6. `value` must be over 0.
inline float lane_log(float value) {
  const auto bits = std::bit_cast<std::int32_t>(value);
  const std::int32_t from_root_half = bits - 0x3f3504f3;
  const std::int32_t exponent = from_root_half >> 23;
  const float mantissa = std::bit_cast<float>(bits - exponent * (1 << 23));
  const float t = (mantissa - 1.0F) / (mantissa + 1.0F);
  const float tt = t * t;
  const float series = 1.0F + tt * (1.0F / 3.0F + tt * (0.2F + tt * (1.0F / 7.0F)));
  return static_cast<float>(exponent) * 0.69314718F + 2.0F * t * series;
}

// e^x by halves of a binary logarithm and Taylor's series, relative error below 1e-5; clamped below
// at -40. `x` must not be over 40.
inline float lane_exp(float x) {
  const float binary = (x < -40.0F ? -40.0F : x) * 1.44269504F + 64.5F;
  const auto whole = static_cast<std::int32_t>(binary);  // positive, so that it rounds down
  const float rest = (binary - static_cast<float>(whole) - 0.5F) * 0.69314718F;
  const float series =
      1.0F +
      rest * (1.0F + rest * (0.5F + rest * (1.0F / 6.0F + rest * (1.0F / 24.0F + rest / 120.0F))));
  return series * std::bit_cast<float>((whole - 64 + 127) * (1 << 23));
}

// 1 / sqrt(value) by Newton's method from a first guess from the exponent; relative error below
// 1e-6. `value` must be over 0.
inline float lane_inverse_root(float value) {
  float root = std::bit_cast<float>(0x5f3759df - (std::bit_cast<std::int32_t>(value) >> 1));
  for (int round = 0; round < 3; ++round) root *= 1.5F - 0.5F * value * root * root;
  return root;
}

// The logarithm of the normal distribution function and its slope, to first order around entries
// 1/32 apart: error below 1e-4.
class LogNormal {
 public:
  struct Value {
    float logarithm, slope;
  };

  static const LogNormal& table() {
    static const LogNormal made;
    return made;
  }

  Value at(float z) const {
    const float inside = std::min(std::max(z, kLeast), kMost);
    const auto i = static_cast<std::int32_t>((inside - kLeast) * kPerUnit + 0.5F);
    const Value& entry = entries_[static_cast<std::size_t>(i)];
    const float at = kLeast + static_cast<float>(i) / kPerUnit;
    const float beyond = inside - at;
    return {entry.logarithm + entry.slope * beyond,
            entry.slope - entry.slope * (entry.slope + at) * beyond};
  }

 private:
  static constexpr float kLeast = -20.0F, kMost = 6.0F, kPerUnit = 32.0F;

  LogNormal() {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      const double z = kLeast + static_cast<double>(i) / kPerUnit;
      const double logarithm = std::log(0.5 * std::erfc(-z / std::numbers::sqrt2));
      const double density = std::exp(-0.5 * z * z - logarithm) / std::sqrt(2.0 * std::numbers::pi);
      entries_[i] = {static_cast<float>(logarithm), static_cast<float>(density)};
    }
  }

  std::array<Value, 26 * 32 + 1> entries_;
};

}  // namespace mastwise::aim
