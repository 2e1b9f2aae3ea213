#pragma once

#include "app/model/model.hpp"

// Rig headings from the rig and its instruments. Each function sets the heading, or the model's
// trouble with the reason.
namespace mastwise {

void nose_from_course(Model& model, bool backed_in);
void nose_from_sensor(Model& model);
void nose_from_sun(Model& model, SunFrom side);
void nose_from_points(Model& model);

}  // namespace mastwise
