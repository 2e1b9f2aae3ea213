#pragma once

#include "app/model/model.hpp"

// What the touches of the sweep do to the model.
namespace mastwise {

// A new sweep of the target, from its computed heading; none without target or heading.
void begin_sweep(Model& model, SweepBy by);
void turn_sweep(Model& model, double clockwise_deg);
void set_meter(Model& model, double by);
void read_sweep(Model& model, bool nothing);
void drop_sweep_reading(Model& model);
void mark_sweep_edge(Model& model, bool right);
void next_scale(Model& model);

// What the sweep found corrects the other headings of this stop.
void keep_sweep(Model& model);

// Fills what the stations peaked on say of compass and handle.
void derive_dial_checks(const Model& model, Findings& findings);

}  // namespace mastwise
