#pragma once

#include "app/ahead/state.hpp"
#include "app/aim/state.hpp"
#include "app/data/state.hpp"
#include "app/here/state.hpp"
#include "app/keypad/state.hpp"
#include "app/logbook/state.hpp"
#include "app/map/state.hpp"
#include "app/parking/state.hpp"
#include "app/peak/state.hpp"
#include "app/plan/state.hpp"
#include "app/safety/state.hpp"
#include "app/shared/shared.hpp"
#include "app/stations/state.hpp"

namespace mastwise {

// The whole state of the app: what all features may see, and beside it what each has for itself.
struct Model : Shared {
  HereState here = {};
  StationsState list = {};
  MapState map = {};
  AimState aim = {};
  PlanState plan = {};
  PeakState peak = {};
  LogbookState logbook = {};
  AheadState ahead = {};
  ParkingState parking = {};
  Intake data = {};
  KeypadState keypad = {};
  SafetyState safety = {};
  bool operator==(const Model&) const = default;
};

}  // namespace mastwise
