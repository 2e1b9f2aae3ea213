#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"

#include <string>
#include <vector>

namespace mastwise::screens {

// The saying of the chosen way; null for one without its own, as a kind of compass.
const Saying* chosen_saying(const Shared& shared, const AimState& aim);

// What speaks against the heading on the aim card, in sentences, what matters most first. The card
// must be there.
std::vector<std::string> heading_doubts(const Shared& shared, const AimState& aim);

}  // namespace mastwise::screens
