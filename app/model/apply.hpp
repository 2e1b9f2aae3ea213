#pragma once

#include "app/model/action.hpp"
#include "app/model/model.hpp"
#include "core/geo/magnetic_field.hpp"

namespace mastwise {

// Constant data that the computations need besides the model.
struct World {
  const MagneticModel& magnetic;
  Stop practice_stop;
};

// The only way in which the model changes.
void apply(Model& model, const Action& action, const World& world);

// Brings the findings up to date.
void derive(Model& model, const World& world);

}  // namespace mastwise
