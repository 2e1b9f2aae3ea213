#pragma once

#include "app/model/model.hpp"
#include "core/safety/prompts.hpp"

#include <string>

namespace mastwise {

// The prompt to show; `asking` is not Nothing.
const safety::Prompt& prompt_of(Asking asking);

void ask(Model& model, Asking what);
void confirm_asked(Model& model);
void go_to_roof(Model& model);

// Undoes the last change of the antenna and writes that too. An undo that marks the antenna down
// asks first.
void undo_antenna(Model& model);

// The change was written, or failed with `trouble`.
void antenna_written(Model& model, const std::string& trouble);

// A change waits to be written, and it is time to try.
bool antenna_to_write(const Model& model);

// Follows the rig's motion: starts and ends the alarm, and asks when the rig has stopped.
void follow_motion(Model& model);

// The alarm sounds at half its loudness.
bool alarm_is_quiet(const Model& model);

}  // namespace mastwise
