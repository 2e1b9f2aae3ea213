#pragma once

#include <cmath>
#include <compare>

namespace mastwise {

// Degrees folded into [0, 360), never -0. `degrees` must be finite.
inline double fold_circle_deg(double degrees) {
  const double folded = std::fmod(degrees, 360.0);
  const double positive = folded < 0.0 ? folded + 360.0 : folded;
  return positive >= 360.0 ? 0.0 : positive + 0.0;
}

// Degrees folded into (-180, 180].
inline double fold_half_circle_deg(double degrees) {
  const double folded = fold_circle_deg(degrees);
  return folded > 180.0 ? folded - 360.0 : folded;
}

// How far to turn: positive is clockwise seen from above (to the right), within (-180, 180]
// degrees.
class Turn {
 public:
  constexpr Turn() = default;
  static Turn clockwise_deg(double degrees) { return Turn(fold_half_circle_deg(degrees)); }
  constexpr double clockwise_deg() const { return degrees_; }
  double size_deg() const { return std::fabs(degrees_); }
  Turn operator-() const { return clockwise_deg(-degrees_); }
  auto operator<=>(const Turn&) const = default;

 private:
  explicit constexpr Turn(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// The north that a bearing is counted from.
struct True;      // the meridian
struct Magnetic;  // the direction of an undisturbed compass needle
struct Grid;      // the grid lines of a map

// A direction clockwise from a north, within [0, 360) degrees. Bearings from different norths are
// different types; only a Declination or a Convergence converts between them.
template <class North>
class Bearing {
 public:
  constexpr Bearing() = default;
  static Bearing degrees(double degrees) { return Bearing(fold_circle_deg(degrees)); }
  constexpr double degrees() const { return degrees_; }
  Bearing reciprocal() const { return degrees(degrees_ + 180.0); }

  friend Bearing operator+(Bearing bearing, Turn turn) {
    return degrees(bearing.degrees_ + turn.clockwise_deg());
  }
  friend Bearing operator-(Bearing bearing, Turn turn) { return bearing + (-turn); }
  // The shorter turn from `from` to `to`.
  friend Turn operator-(Bearing to, Bearing from) {
    return Turn::clockwise_deg(to.degrees_ - from.degrees_);
  }
  bool operator==(const Bearing&) const = default;

 private:
  explicit constexpr Bearing(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// Direction of magnetic north relative to true north, east positive, within (-180, 180] degrees.
class Declination {
 public:
  constexpr Declination() = default;
  static Declination east_deg(double degrees) { return Declination(fold_half_circle_deg(degrees)); }
  constexpr double east_deg() const { return degrees_; }
  bool operator==(const Declination&) const = default;

 private:
  explicit constexpr Declination(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// Direction of grid north relative to true north, east positive, within (-180, 180] degrees.
class Convergence {
 public:
  constexpr Convergence() = default;
  static Convergence east_deg(double degrees) { return Convergence(fold_half_circle_deg(degrees)); }
  constexpr double east_deg() const { return degrees_; }
  bool operator==(const Convergence&) const = default;

 private:
  explicit constexpr Convergence(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// The direction of the rig's nose.
class RigHeading {
 public:
  constexpr RigHeading() = default;
  static constexpr RigHeading nose_at(Bearing<True> nose) { return RigHeading(nose); }
  constexpr Bearing<True> nose() const { return nose_; }
  bool operator==(const RigHeading&) const = default;

 private:
  explicit constexpr RigHeading(Bearing<True> nose) : nose_(nose) {}
  Bearing<True> nose_;
};

// A direction clockwise from the rig's nose, seen from above, within [0, 360) degrees.
class RigAngle {
 public:
  constexpr RigAngle() = default;
  static RigAngle clockwise_deg(double degrees) { return RigAngle(fold_circle_deg(degrees)); }
  constexpr double clockwise_deg() const { return degrees_; }
  friend Turn operator-(RigAngle to, RigAngle from) {
    return Turn::clockwise_deg(to.degrees_ - from.degrees_);
  }
  bool operator==(const RigAngle&) const = default;

 private:
  explicit constexpr RigAngle(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// magnetic = true - declination, grid = true - convergence, rig angle = true - rig heading.
inline Bearing<Magnetic> to_magnetic(Bearing<True> bearing, Declination declination) {
  return Bearing<Magnetic>::degrees(bearing.degrees() - declination.east_deg());
}
inline Bearing<True> to_true(Bearing<Magnetic> bearing, Declination declination) {
  return Bearing<True>::degrees(bearing.degrees() + declination.east_deg());
}
inline Bearing<Grid> to_grid(Bearing<True> bearing, Convergence convergence) {
  return Bearing<Grid>::degrees(bearing.degrees() - convergence.east_deg());
}
inline Bearing<True> to_true(Bearing<Grid> bearing, Convergence convergence) {
  return Bearing<True>::degrees(bearing.degrees() + convergence.east_deg());
}
inline RigAngle to_rig_angle(Bearing<True> bearing, RigHeading heading) {
  return RigAngle::clockwise_deg(bearing.degrees() - heading.nose().degrees());
}
inline Bearing<True> to_true(RigAngle angle, RigHeading heading) {
  return Bearing<True>::degrees(heading.nose().degrees() + angle.clockwise_deg());
}

}  // namespace mastwise
