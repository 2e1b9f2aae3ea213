#pragma once

#include "app/data/state.hpp"

namespace mastwise {

IntakeSource source_shown(const SourceSummary& source, std::chrono::local_days today);

// `here`: the rig's position, empty in practice.
IntakeFindings intake_findings(const Intake& intake, std::chrono::local_days today,
                               const std::optional<Position>& here, bool miles);

}  // namespace mastwise
