#pragma once

#include <numbers>

namespace mastwise {

// Multiply degrees by this to get radians.
inline constexpr double kRadian = std::numbers::pi / 180.0;

}  // namespace mastwise
