#pragma once

#include "app/shared/navigation.hpp"
#include "core/geo/position.hpp"
#include "core/headings/standing.hpp"
#include "core/logbook/record.hpp"
#include "core/safety/drive_off.hpp"
#include "core/safety/keep_out.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>

namespace mastwise {

// The state of the antenna's mast and the rig's motion.
struct SafetyState {
  safety::Antenna antenna = safety::Antenna::Down;
  // A change that is not on the disk yet. The antenna counts as up before the write, and as down
  // only after it.
  std::optional<AntennaChange> unsaved = {};
  Monotonic next_try = {};  // to write it
  struct Undo {
    safety::Antenna before = safety::Antenna::Down;
    Monotonic until;
    bool operator==(const Undo&) const = default;
  };
  std::optional<Undo> undo = {};  // of the last change

  Asking asking = Asking::Nothing;
  double raised_m = 0.0;          // the top of the raised antenna, while a prompt is open
  safety::KeepOut keep_out = {};  // likewise
  std::optional<Monotonic> moving_asked = {};  // when the rig was last said to stand, in this run
  std::optional<Monotonic> asked = {};  // when a raised antenna was last confirmed, in this run
  bool roof = false;                    // the roof screen covers the places
  std::optional<Standing> stood = {};   // before going up, if somebody had said where
  bool roof_agreed = false;             // its prompt was confirmed since the antenna was last down

  safety::Drive drive = safety::Drive::Parked;
  Monotonic speed_heard = {};  // the last speed over ground
  Monotonic quiet_until = {};  // the alarm is quieter until then
  bool stopped = false;        // the rig stands after the alarm, and nobody has answered yet
  // A passenger has unlocked the screens under way. It lapses this long after the rig stands.
  std::optional<Monotonic> passenger_until = {};
  std::optional<Position> departed = {};  // where the present drive began
  bool operator==(const SafetyState&) const = default;
};

// The next of the places ahead, for the face under way.
struct NextStop {
  std::string name = {};               // of the town near it; empty if unknown
  double left_m = 0.0;                 // in a straight line
  std::optional<double> whole_m = {};  // from where the drive began
};

}  // namespace mastwise
