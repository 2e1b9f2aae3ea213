#include "core/geo/circle_boxes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise {

std::vector<Box> boxes_around(const Position& center, double distance_m) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  constexpr double kPolarSemiAxisM = 6356752.314245;        // WGS84
  constexpr double kAxisRatio = 1.0 - 1.0 / 298.257223563;  // b/a
  constexpr double kMarginDeg = 1e-9;                       // rounding
  const double span = distance_m / kPolarSemiAxisM;
  const double reduced = std::atan(kAxisRatio * std::tan(center.latitude_deg() * kDegree));
  const auto geographic_deg = [&](double reduced_latitude) {
    if (std::fabs(reduced_latitude) >= std::numbers::pi / 2.0) {
      return std::copysign(90.0, reduced_latitude);
    }
    return std::atan(std::tan(reduced_latitude) / kAxisRatio) / kDegree;
  };
  Box box{geographic_deg(reduced - span) - kMarginDeg, geographic_deg(reduced + span) + kMarginDeg,
          -180.0, 180.0};
  if (std::fabs(reduced) + span >= std::numbers::pi / 2.0) return {box};

  const double half_width_deg =
      std::asin(std::min(1.0, std::sin(span) / std::cos(reduced))) / kDegree + kMarginDeg;
  box.west_deg = center.longitude_deg() - half_width_deg;
  box.east_deg = center.longitude_deg() + half_width_deg;
  if (box.west_deg >= -180.0 && box.east_deg <= 180.0) return {box};
  Box west_of_line = box;
  Box east_of_line = box;
  west_of_line.west_deg = box.west_deg < -180.0 ? box.west_deg + 360.0 : box.west_deg;
  west_of_line.east_deg = 180.0;
  east_of_line.west_deg = -180.0;
  east_of_line.east_deg = box.east_deg > 180.0 ? box.east_deg - 360.0 : box.east_deg;
  return {west_of_line, east_of_line};
}

}  // namespace mastwise
