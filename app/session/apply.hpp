#pragma once

#include "app/session/action.hpp"
#include "app/session/model.hpp"

namespace mastwise {

// The only way in which the model changes: applies the action and those that follow from it, and
// derives the rest.
void apply(Model& model, const Action& action, const World& world);

// Brings everything that follows from the rest up to date.
void derive_all(Model& model, const World& world);

}  // namespace mastwise
