#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <optional>

namespace mastwise {

// A reading of the dial around a ceiling handle, by its marks, within [0, 360) degrees.
class HandleReading {
 public:
  constexpr HandleReading() = default;
  static HandleReading dial_deg(double degrees) { return HandleReading(fold_circle_deg(degrees)); }
  constexpr double dial_deg() const { return degrees_; }
  bool operator==(const HandleReading&) const = default;

 private:
  explicit constexpr HandleReading(double degrees) : degrees_(degrees) {}
  double degrees_ = 0.0;
};

// The direction in which the dial's numbers increase, seen by a person who looks up at the ceiling.
// Clockwise from below is anticlockwise in plan.
enum class DialSense { clockwise_from_below, anticlockwise_from_below };

// The readings that the handle can reach: by increasing numbers from `from` to `to`. Two equal ends
// are a whole turn with one stop. Handles that turn more than once are not supported.
struct HandleArc {
  HandleReading from;
  HandleReading to;
  bool operator==(const HandleArc&) const = default;
};

// The observed antenna direction at a handle reading. Convert a true bearing with
// to_rig_angle(bearing, rig heading).
struct HandlePoint {
  HandleReading reading;
  RigAngle angle;
  bool operator==(const HandlePoint&) const = default;
};

// Properties of a handle besides its direction.
struct HandleMechanism {
  std::optional<HandleArc> reach = {};  // std::nullopt: no stop
  // Between handle and antenna; 5 to 10 [common practice, no source].
  double play_deg = 5.0;
  // The reading at which some mechanisms must be before they are lowered, or they break [common
  // practice, no source].
  std::optional<HandleReading> stow_reading = {};
  bool operator==(const HandleMechanism&) const = default;
};

// A side of the rig.
enum class RigSide { nose, right, tail, left };

// How to turn the handle.
struct HandleTurn {
  HandleReading reading;            // the final reading
  double clockwise_from_below_deg;  // how far, without crossing a stop; negative is anticlockwise
                                    // from below
  // Turn this far past the reading, then come back clockwise, so that the play is always on the
  // same side.
  double past_deg;
  RigSide swings_toward;  // where the antenna's front first moves
  bool operator==(const HandleTurn&) const = default;
};

// The closest aim that the handle allows.
struct NearestAim {
  HandleReading reading;
  RigAngle angle;
  Turn off;  // from the wanted angle to this; zero if the wanted angle can be reached
  bool operator==(const NearestAim&) const = default;
};

// A calibrated ceiling handle. One turn of the handle counts as one turn of the antenna.
class Handle {
 public:
  // Two points give the zero and the direction. Errors: the points are not 30 to 150 degrees apart,
  // so both directions would fit; or neither direction fits within twice the play, at least 10
  // degrees; or the play is invalid. Take readings while the handle moves clockwise, seen from
  // below.
  static Result<Handle> calibrate(HandlePoint first, HandlePoint second,
                                  HandleMechanism mechanism = {});

  DialSense sense() const { return sense_; }
  const HandleMechanism& mechanism() const { return mechanism_; }
  // The difference of the two points' turns; each is off by half of it.
  Turn residual() const { return residual_; }
  // One standard deviation of the zero, degrees. The residual is the difference of two equal
  // errors; their mean errs by half of it.
  double sigma_deg() const { return residual_.size_deg() / 2.0; }

  RigAngle angle_at(HandleReading reading) const;
  // The reading that aims at `wanted`, or as close to it as the stops allow.
  NearestAim nearest(RigAngle wanted) const;
  // The turn from the `present` reading to the one that aims at `wanted`, by the direction that
  // crosses no stop, or the shorter if both are free. Errors: the wanted angle is in the dead arc
  // (the error names the nearest reading that can be reached), or the present reading is, so it was
  // misread. At a stop of a whole turn the reading cannot show the side: if the handle does not
  // move, turn it the other way.
  Result<HandleTurn> turn_to(RigAngle wanted, HandleReading present) const;
  // The turn to the stow reading. Additional error: the stow reading is unknown.
  Result<HandleTurn> turn_to_stow(HandleReading present) const;
  bool operator==(const Handle&) const = default;

 private:
  Handle() = default;
  HandleReading reading_for(RigAngle angle) const;
  Result<HandleTurn> turn_between(HandleReading present, HandleReading wanted) const;
  double room_deg(HandleReading reading, bool clockwise) const;

  RigAngle at_zero_;  // the antenna's direction at reading 0
  DialSense sense_ = DialSense::clockwise_from_below;
  Turn residual_;
  HandleMechanism mechanism_;
};

// The side of the rig toward which the antenna's front swings when it leaves `from`.
RigSide swing_side(RigAngle from, bool clockwise_in_plan);

}  // namespace mastwise
