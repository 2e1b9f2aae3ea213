#pragma once

#include "app/model/model.hpp"

// Changes of the model by the sweep's buttons.
namespace mastwise {

// Starts a sweep of the target at its computed heading; does nothing without target or heading.
void begin_sweep(Model& model, SweepBy by);
void turn_sweep(Model& model, double clockwise_deg);
void set_meter(Model& model, double by);
void read_sweep(Model& model, bool nothing);
void drop_sweep_reading(Model& model);
void mark_sweep_edge(Model& model, bool right);
void next_scale(Model& model);

// Saves the sweep's result, which corrects the other headings of this stop.
void keep_sweep(Model& model);

// Fills the compass and handle checks by stations peaked on.
void derive_dial_checks(const Model& model, Findings& findings);

}  // namespace mastwise
