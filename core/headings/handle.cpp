#include "core/headings/handle.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr double kLeastApart_deg = 30.0;
constexpr double kMostApart_deg = 150.0;
constexpr double kLeastAllowed_deg = 10.0;
constexpr double kWholeTurn_deg = 360.0;

// Degrees of rig angle for one degree of the dial.
double sign_of(DialSense sense) {
  return sense == DialSense::anticlockwise_from_below ? 1.0 : -1.0;
}

bool are_well_apart(double turn_deg) {
  const double apart_deg = std::fabs(turn_deg);
  return apart_deg >= kLeastApart_deg && apart_deg <= kMostApart_deg;
}

Error not_apart(const char* what) {
  return {.what = fmt::format("the two {} must be 30 to 150 degrees apart; otherwise the dial "
                              "could run either way",
                              what),
          .where = "handle calibration",
          .remedy = "choose two points about a quarter turn apart"};
}

// Degrees from the lower stop, in the direction of increasing dial numbers.
double above_stop_deg(const HandleArc& reach, HandleReading reading) {
  return fold_circle_deg(reading.dial_deg() - reach.from.dial_deg());
}

double length_deg(const HandleArc& reach) {
  const double length = above_stop_deg(reach, reach.to);
  return length > 0.0 ? length : kWholeTurn_deg;
}

// Whole degrees of a circle: 359.7 is 0.
int whole_degrees(double degrees) {
  return static_cast<int>(std::lround(fold_circle_deg(degrees))) % 360;
}

// Rounding can move a computed reading just past a stop.
constexpr double kRounding_deg = 1e-9;

bool reaches(const std::optional<HandleArc>& reach, HandleReading reading) {
  if (!reach) return true;
  const double above_deg = above_stop_deg(*reach, reading);
  return above_deg <= length_deg(*reach) + kRounding_deg ||
         above_deg >= kWholeTurn_deg - kRounding_deg;
}

}  // namespace

Result<Handle> Handle::calibrate(HandlePoint first, HandlePoint second, HandleMechanism mechanism) {
  if (!std::isfinite(mechanism.play_deg) || mechanism.play_deg < 0.0) {
    return Error{
        .what = "the play must be 0 degrees or more",
        .where = "handle calibration",
        .remedy =
            "move the handle back and forth and see how far it goes before the antenna moves"};
  }
  const Turn angles = second.angle - first.angle;
  const Turn readings = Turn::clockwise_deg(second.reading.dial_deg() - first.reading.dial_deg());
  if (!are_well_apart(angles.clockwise_deg())) return not_apart("directions of the antenna");
  if (!are_well_apart(readings.clockwise_deg())) return not_apart("handle readings");

  const auto misfit = [&](DialSense sense) {
    return Turn::clockwise_deg(angles.clockwise_deg() - sign_of(sense) * readings.clockwise_deg());
  };
  Handle handle;
  handle.sense_ = DialSense::clockwise_from_below;
  if (misfit(DialSense::anticlockwise_from_below).size_deg() < misfit(handle.sense_).size_deg()) {
    handle.sense_ = DialSense::anticlockwise_from_below;
  }
  handle.residual_ = misfit(handle.sense_);
  const double allowed_deg = std::max(2.0 * mechanism.play_deg, kLeastAllowed_deg);
  if (handle.residual_.size_deg() > allowed_deg) {
    return Error{
        .what = fmt::format("the antenna turned by {:.0f} degrees and the handle by {:.0f} "
                            "degrees: no dial fits both points",
                            angles.size_deg(), readings.size_deg()),
        .where = "handle calibration",
        .remedy =
            "read both points again, turning the handle clockwise to each; if the numbers "
            "stay the same, the handle slips or is geared"};
  }
  handle.mechanism_ = mechanism;
  handle.at_zero_ = RigAngle::clockwise_deg(first.angle.clockwise_deg() -
                                            sign_of(handle.sense_) * first.reading.dial_deg() +
                                            handle.residual_.clockwise_deg() / 2.0);
  return handle;
}

RigAngle Handle::angle_at(HandleReading reading) const {
  return RigAngle::clockwise_deg(at_zero_.clockwise_deg() + sign_of(sense_) * reading.dial_deg());
}

HandleReading Handle::reading_for(RigAngle angle) const {
  return HandleReading::dial_deg(sign_of(sense_) *
                                 (angle.clockwise_deg() - at_zero_.clockwise_deg()));
}

NearestAim Handle::nearest(RigAngle wanted) const {
  const HandleReading exact = reading_for(wanted);
  const auto& reach = mechanism_.reach;
  if (reaches(reach, exact)) return {.reading = exact, .angle = wanted, .off = {}};
  const double beyond_to_deg = above_stop_deg(*reach, exact) - length_deg(*reach);
  const double before_from_deg = kWholeTurn_deg - above_stop_deg(*reach, exact);
  const HandleReading stop = beyond_to_deg <= before_from_deg ? reach->to : reach->from;
  const RigAngle angle = angle_at(stop);
  return {.reading = stop, .angle = angle, .off = angle - wanted};
}

Result<HandleTurn> Handle::turn_to(RigAngle wanted, HandleReading present) const {
  const NearestAim nearest_aim = nearest(wanted);
  if (!reaches(mechanism_.reach, reading_for(wanted))) {
    return Error{
        .what = fmt::format("the handle's stops keep the antenna from {} degrees clockwise of the "
                            "nose",
                            whole_degrees(wanted.clockwise_deg())),
        .where = "handle",
        .remedy =
            fmt::format("set the handle to {}, the nearest it can reach, {:.0f} degrees {}; "
                        "or park the rig another way",
                        whole_degrees(nearest_aim.reading.dial_deg()), nearest_aim.off.size_deg(),
                        nearest_aim.off.clockwise_deg() > 0.0 ? "right" : "left")};
  }
  return turn_between(present, nearest_aim.reading);
}

Result<HandleTurn> Handle::turn_to_stow(HandleReading present) const {
  const auto& stow = mechanism_.stow_reading;
  if (!stow) {
    return Error{.what = "the handle's stow reading is not known",
                 .where = "handle",
                 .remedy = "read the antenna maker's instructions before you lower it"};
  }
  if (!reaches(mechanism_.reach, *stow)) {
    return Error{.what = "the stow reading is between the stops, where the handle cannot go",
                 .where = "handle",
                 .remedy = "check the stow reading and both stops"};
  }
  return turn_between(present, *stow);
}

// How far the handle can turn one way before a stop. Infinite without stops.
double Handle::room_deg(HandleReading reading, bool clockwise) const {
  const auto& reach = mechanism_.reach;
  if (!reach) return kWholeTurn_deg;
  const double above_deg = std::min(above_stop_deg(*reach, reading), length_deg(*reach));
  const bool numbers_grow = clockwise == (sense_ == DialSense::clockwise_from_below);
  return numbers_grow ? length_deg(*reach) - above_deg : above_deg;
}

Result<HandleTurn> Handle::turn_between(HandleReading present, HandleReading wanted) const {
  const auto& reach = mechanism_.reach;
  if (!reaches(reach, present)) {
    return Error{.what = fmt::format("the handle cannot be at {}, between its stops",
                                     whole_degrees(present.dial_deg())),
                 .where = "handle",
                 .remedy = "read the handle again, or check the stops"};
  }
  const double up_deg = fold_circle_deg(wanted.dial_deg() - present.dial_deg());
  double numbers_deg = fold_half_circle_deg(up_deg);
  // With stops only one way stays on the arc.
  if (reach && above_stop_deg(*reach, present) + up_deg > length_deg(*reach) + kRounding_deg) {
    numbers_deg = up_deg - kWholeTurn_deg;
  } else if (reach) {
    numbers_deg = up_deg;
  }
  HandleTurn turn{.reading = wanted,
                  .clockwise_from_below_deg =
                      sense_ == DialSense::clockwise_from_below ? numbers_deg : -numbers_deg,
                  .past_deg = 0.0,
                  .swings_toward = {}};
  if (turn.clockwise_from_below_deg < 0.0) {
    turn.past_deg = std::min(mechanism_.play_deg, room_deg(wanted, false));
  }
  turn.swings_toward = swing_side(angle_at(present), turn.clockwise_from_below_deg <= 0.0);
  return turn;
}

RigSide swing_side(RigAngle from, bool clockwise_in_plan) {
  const double angle = from.clockwise_deg() * std::numbers::pi / 180.0;
  const double way = clockwise_in_plan ? 1.0 : -1.0;
  const double to_right = way * std::cos(angle);
  const double to_nose = -way * std::sin(angle);
  if (std::fabs(to_right) >= std::fabs(to_nose)) {
    return to_right > 0.0 ? RigSide::right : RigSide::left;
  }
  return to_nose > 0.0 ? RigSide::nose : RigSide::tail;
}

}  // namespace mastwise
