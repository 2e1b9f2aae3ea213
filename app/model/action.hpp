#pragma once

#include "app/model/find_actions.hpp"
#include "app/model/record_actions.hpp"
#include "app/model/stop_actions.hpp"
#include "app/safety/actions.hpp"

// Everything that can happen to the model. Only devices, fingers, the clock and the workers make
// actions; nothing else changes the model, so a session is the list of its actions.
namespace mastwise {

using ModelActions = Joined<Joined<StopActions, FindActions>, RecordActions>;
using AllActions = Joined<SafetyActions, ModelActions>;

}  // namespace mastwise
