#pragma once

#include "core/angles/bearing.hpp"

#include <cmath>
#include <string>

#include <fmt/format.h>

namespace mastwise {

// Whole degrees of a circle: "37"; 359.7 is "0".
inline std::string whole_degrees(double degrees) {
  return std::to_string(std::lround(fold_circle_deg(degrees)) % 360);
}

// An amount in whole degrees: "1 degree", "12 degrees".
inline std::string degrees_words(double amount_deg) {
  const long whole = std::lround(std::fabs(amount_deg));
  return fmt::format("{} degree{}", whole, whole == 1 ? "" : "s");
}

// "12 degrees right"; where it rounds to none, "straight along it".
inline std::string aside_words(Turn turn) {
  if (std::lround(turn.size_deg()) == 0) return "straight along it";
  return degrees_words(turn.clockwise_deg()) + (turn.clockwise_deg() > 0.0 ? " right" : " left");
}

// "13 E", "14 W", "0".
inline std::string declination_words(Declination declination) {
  const long whole = std::lround(std::fabs(declination.east_deg()));
  if (whole == 0) return "0";
  return fmt::format("{} {}", whole, declination.east_deg() > 0.0 ? 'E' : 'W');
}

}  // namespace mastwise
