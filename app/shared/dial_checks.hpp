#pragma once

#include "app/shared/shared.hpp"

namespace mastwise {

// Fills the compass and handle checks by the stations peaked on at this stop.
void derive_dial_checks(const Shared& shared, Findings& findings);

// The deviation where the compass is read, one sigma, before any check but reciprocal bearings
// there; std::nullopt if nobody has said where, or without a position.
std::optional<double> unchecked_deviation_deg(const Shared& shared,
                                              std::optional<Standing> standing);

// The rig angle to set the saved handle to for the target: the target's, less the handle's error
// where stations peaked on at this stop show it. std::nullopt without a target or a rig heading.
std::optional<RigAngle> angle_by_handle(const Findings& findings);

}  // namespace mastwise
