#pragma once

#include "app/model/model.hpp"

// Where the nose points, from what the rig and its instruments show. Each gives the nose or says in
// the model's trouble why it cannot.
namespace mastwise {

void nose_from_course(Model& model, bool backed_in);
void nose_from_sensor(Model& model);
void nose_from_sun(Model& model, SunFrom side);
void nose_from_points(Model& model);

}  // namespace mastwise
