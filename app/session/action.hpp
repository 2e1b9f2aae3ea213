#pragma once

#include "app/ahead/actions.hpp"
#include "app/aim/actions.hpp"
#include "app/data/actions.hpp"
#include "app/here/actions.hpp"
#include "app/keypad/actions.hpp"
#include "app/logbook/actions.hpp"
#include "app/map/actions.hpp"
#include "app/parking/actions.hpp"
#include "app/peak/actions.hpp"
#include "app/plan/actions.hpp"
#include "app/safety/actions.hpp"
#include "app/shared/actions.hpp"
#include "app/stations/actions.hpp"

// Everything that can happen to the model. Only devices, fingers, the clock and the workers make
// actions; nothing else changes the model, so a session is the list of its actions.
namespace mastwise {

using AllActions = Joined<SharedActions, HereActions, StationsActions, MapActions, AimActions,
                          PlanActions, PeakActions, LogbookActions, AheadActions, ParkingActions,
                          DataActions, KeypadActions, SafetyActions>;

}  // namespace mastwise
