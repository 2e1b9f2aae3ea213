#pragma once

#include "core/geo/magnetic_field.hpp"
#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <array>
#include <vector>

namespace mastwise {

// Where the earth's horizontal field is too weak for a compass, around one magnetic pole.
struct WeakField {
  Position pole;  // where the field has no horizontal part
  // Where it is kBlackoutBelow_nt and kCautionBelow_nt, seen from the pole on kOutlineBearings
  // bearings, the first toward north, then clockwise.
  std::vector<Position> blackout, caution;
  bool operator==(const WeakField&) const = default;
};
inline constexpr int kOutlineBearings = 36;

// Both zones around the northern and the southern magnetic pole on `date`, `height_m` above the
// WGS84 ellipsoid. The outlines are within 1 km of the model's. Source: the horizontal field of the
// World Magnetic Model 2025.
std::array<WeakField, 2> weak_fields(const MagneticModel& model, UtcTime date,
                                     double height_m = 0.0);

}  // namespace mastwise
