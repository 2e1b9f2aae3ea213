#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <optional>

namespace mastwise {

// What the dial around a ceiling handle says, by its own marks, within [0, 360) degrees.
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

// Which way round the dial's numbers grow as a person sees it who looks up at the ceiling.
// Clockwise from below is anticlockwise in plan.
enum class DialSense { clockwise_from_below, anticlockwise_from_below };

// The readings that the handle reaches: upward by the dial's numbers from `from` to `to`. Two equal
// ends are a whole turn with one stop. A handle that turns more than once round is not known here.
struct HandleArc {
  HandleReading from;
  HandleReading to;
  bool operator==(const HandleArc&) const = default;
};

// Where the antenna was seen to point while the handle stood at a reading. From a true bearing it
// is to_rig_angle(bearing, rig heading).
struct HandlePoint {
  HandleReading reading;
  RigAngle angle;
  bool operator==(const HandlePoint&) const = default;
};

// What is known of a handle besides where it points.
struct HandleMechanism {
  std::optional<HandleArc> reach = {};  // nothing: no stop
  // Between handle and antenna; 5 to 10 [common practice, no source].
  double play_deg = 5.0;
  // Where some mechanisms must stand before they are lowered, or they break [common practice, no
  // source].
  std::optional<HandleReading> stow_reading = {};
  bool operator==(const HandleMechanism&) const = default;
};

// A side of the rig.
enum class RigSide { nose, right, tail, left };

// How to turn the handle.
struct HandleTurn {
  HandleReading reading;            // where it comes to stand
  double clockwise_from_below_deg;  // how far, past no stop; negative is anticlockwise from below
  // To go on so far beyond and come back clockwise, so that the play lies always on the same side.
  double past_deg;
  RigSide swings_toward;  // where the antenna's front first moves
  bool operator==(const HandleTurn&) const = default;
};

// The nearest that the handle can aim.
struct NearestAim {
  HandleReading reading;
  RigAngle angle;
  Turn off;  // from the wanted angle to this; no turn where the wanted one is reached
  bool operator==(const NearestAim&) const = default;
};

// A ceiling handle that has been calibrated. One turn of the handle is taken for one of the
// antenna.
class Handle {
 public:
  // Two points give zero and sense. The error: the points are not 30 to 150 degrees apart, where
  // both senses would fit; or neither sense fits within twice the play, 10 degrees at least; or a
  // play that is none. Readings are best taken with the handle coming clockwise, seen from below.
  static Result<Handle> calibrate(HandlePoint first, HandlePoint second,
                                  HandleMechanism mechanism = {});

  DialSense sense() const { return sense_; }
  const HandleMechanism& mechanism() const { return mechanism_; }
  // By how much the two points' turns differ; each is off by half of it.
  Turn residual() const { return residual_; }
  // One standard deviation of the zero, degrees: the residual is the difference of two equal
  // errors, and their mean errs by half of it.
  double sigma_deg() const { return residual_.size_deg() / 2.0; }

  RigAngle angle_at(HandleReading reading) const;
  // The reading that aims at `wanted`, or as near to it as the stops allow.
  NearestAim nearest(RigAngle wanted) const;
  // From the `present` reading to the one that aims at `wanted`, by the way round that crosses no
  // stop; the shorter where both are free. The error: the wanted angle lies in the dead arc, with
  // the nearest that can be reached; or the present reading does, so that it was misread. At a
  // stop of a whole turn the reading cannot tell the side: if the handle will not go, go the other
  // way round.
  Result<HandleTurn> turn_to(RigAngle wanted, HandleReading present) const;
  // The same to the stow reading. The error besides: no stow reading is known.
  Result<HandleTurn> turn_to_stow(HandleReading present) const;
  bool operator==(const Handle&) const = default;

 private:
  Handle() = default;
  HandleReading reading_for(RigAngle angle) const;
  Result<HandleTurn> turn_between(HandleReading present, HandleReading wanted) const;
  double room_deg(HandleReading reading, bool clockwise) const;

  RigAngle at_zero_;  // where the antenna points at reading 0
  DialSense sense_ = DialSense::clockwise_from_below;
  Turn residual_;
  HandleMechanism mechanism_;
};

// The side of the rig toward which the antenna's front swings when it leaves `from`.
RigSide swing_side(RigAngle from, bool clockwise_in_plan);

}  // namespace mastwise
