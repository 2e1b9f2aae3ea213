#pragma once

#include "app/model/model.hpp"
#include "core/places/gazetteer.hpp"

#include <string>

// Applies the keypad's text to its purpose.
namespace mastwise {

// Saves the stop for Undo before `what` changes it.
void remember(Model& model, std::string what);

// Sets the position by hand; `name`: of the place whose middle it is.
void stand_at(Stop& stop, const Position& position, double error_m, std::string name = {});

// Applies the keypad's text, or shows its error on the keypad.
void accept_typed(Model& model);
// The same for a place found by name.
void take_place(Model& model, const places::Place& place);

}  // namespace mastwise
