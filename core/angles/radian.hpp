#pragma once

#include <numbers>

namespace mastwise {

// Degrees times this are radians.
inline constexpr double kRadian = std::numbers::pi / 180.0;

}  // namespace mastwise
