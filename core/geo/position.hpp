#pragma once

#include "core/result.hpp"

namespace mastwise {

// A point on the WGS84 ellipsoid.
class Position {
 public:
  // Latitude north positive within [-90, 90] degrees; longitude east positive within [-360, 360]
  // degrees, folded into [-180, 180). The error explains NaN and values out of range.
  static Result<Position> at_deg(double latitude_deg, double longitude_deg);

  double latitude_deg() const { return latitude_deg_; }
  double longitude_deg() const { return longitude_deg_; }
  bool operator==(const Position&) const = default;

 private:
  Position(double latitude_deg, double longitude_deg)
      : latitude_deg_(latitude_deg), longitude_deg_(longitude_deg) {}
  double latitude_deg_;
  double longitude_deg_;
};

}  // namespace mastwise
