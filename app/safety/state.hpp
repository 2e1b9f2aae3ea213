#pragma once

#include "app/shared/navigation.hpp"
#include "core/logbook/record.hpp"
#include "core/safety/drive_off.hpp"
#include "core/time.hpp"

#include <optional>

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
  std::optional<Monotonic> asked = {};  // when a raised antenna was last confirmed, in this run
  bool roof = false;                    // the roof screen covers the places
  bool roof_agreed = false;             // its prompt was confirmed since the antenna was last down

  safety::Drive drive = safety::Drive::Parked;
  Monotonic speed_heard = {};  // the last speed over ground
  Monotonic quiet_until = {};  // the alarm is quieter until then
  bool operator==(const SafetyState&) const = default;
};

}  // namespace mastwise
