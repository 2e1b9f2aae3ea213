#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"

#include <string>
#include <vector>

namespace mastwise::screens {

// What speaks against the heading on the aim card, in sentences, what matters most first. The card
// must be there.
std::vector<std::string> heading_doubts(const Shared& shared, const AimState& aim);

}  // namespace mastwise::screens
