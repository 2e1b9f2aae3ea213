#pragma once

#include "app/data/state.hpp"

namespace mastwise {

// `here`: the rig's position, empty in practice.
IntakeFindings intake_findings(const Intake& intake, UtcTime date,
                               const std::optional<Position>& here, bool miles);

}  // namespace mastwise
