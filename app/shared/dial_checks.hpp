#pragma once

#include "app/shared/shared.hpp"

namespace mastwise {

// Fills the compass and handle checks by the stations peaked on at this stop.
void derive_dial_checks(const Shared& shared, Findings& findings);

}  // namespace mastwise
