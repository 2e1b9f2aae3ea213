#pragma once

#include "app/data/state.hpp"

#include <string>
#include <string_view>

namespace mastwise {

// Values of the parts "kind" and "positions".
inline constexpr const char* kStationsKind = "stations";
inline constexpr const char* kProgramsKind = "programs";
inline constexpr const char* kOtherPositions = "other";
inline constexpr const char* kPositionsAsRead = "as read";

// The offer whose details are shown; null if none is.
const FetchOffer* offer_shown(const Intake& intake);

// Whether the positions look wrong and nobody has chosen a reading.
bool suspected(const Intake& intake);

// The column of a table of programs that a part such as "programs.network" names; null for other
// parts.
std::string* program_column(ProgramColumns& columns, std::string_view part);

IntakeSource source_shown(const SourceSummary& source, std::chrono::local_days today);

// `here`: the rig's position, empty in practice.
IntakeFindings intake_findings(const Intake& intake, std::chrono::local_days today,
                               const std::optional<Position>& here, bool miles);

}  // namespace mastwise
