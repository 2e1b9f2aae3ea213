#pragma once

#include "app/model/model.hpp"
#include "core/places/gazetteer.hpp"

#include <string>

// What was typed on the keypad goes where it belongs.
namespace mastwise {

// The stop as it is, for Undo; `what` is about to change it.
void remember(Model& model, std::string what);

// By hand from now on; `name`: of the place whose middle it is.
void stand_at(Stop& stop, const Position& position, double error_m, std::string name = {});

// Takes what the keypad holds, or says on it why not.
void accept_typed(Model& model);
// The same for a place that was found by its name.
void take_place(Model& model, const places::Place& place);

}  // namespace mastwise
