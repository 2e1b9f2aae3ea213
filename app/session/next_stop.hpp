#pragma once

#include "app/session/model.hpp"

#include <optional>

namespace mastwise {

// The next of the places ahead, in their order: the first that is farther from where the drive
// began than the rig is; else the last. Empty without places or a position.
std::optional<NextStop> next_stop(const Model& model);

}  // namespace mastwise
