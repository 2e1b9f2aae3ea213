#pragma once

#include "app/session/model.hpp"
#include "core/result.hpp"

#include <string>

// What comes back after the app was closed or killed: stop, search, form, plan, sweep, places
// ahead, how things are shown, and the steps of Undo. Settings, antenna and logbook have places of
// their own.
namespace mastwise {

// As JSON, without the rig's position: that changes with every fix.
std::string working_state(const Model& model);

// The same with the rig's position and the time, to be kept.
std::string kept_working_state(const Model& model);

// Puts it back. What cannot be read stays as it is; the result names the first of it. The stop of
// the practice area comes back as it is now.
Result<Done> restore(Model& model, const std::string& kept, const World& world);

}  // namespace mastwise
