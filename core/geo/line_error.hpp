#pragma once

#include <cmath>
#include <numbers>

// Conversion of a position error to a direction error.
namespace mastwise {

// The angle, in degrees, of an error of `error_m` (at least 0) across the line at `distance_m`
// (over 0): atan(error / distance).
inline double angle_of_error_deg(double error_m, double distance_m) {
  return std::atan(error_m / distance_m) * 180.0 / std::numbers::pi;
}

// The angle error, in degrees, of a line between two points that each err by `point_error`, in the
// unit of `length` (over 0): atan(sqrt(2) error / length).
inline double line_error_deg(double point_error, double length) {
  return angle_of_error_deg(std::numbers::sqrt2 * point_error, length);
}

}  // namespace mastwise
