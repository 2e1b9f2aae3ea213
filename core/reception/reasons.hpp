#pragma once

#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/survey.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace mastwise::reception {

// Why a measured station has its chance: by the points of chance that the station would gain
// without the reason, then by decibels; reasons without a cost come last. That the TV
// cannot decode it, or may be unable to, comes first. Costs below 1 dB are left out.
std::vector<Reason> reasons(const LinkBudget& budget, std::span<const Station> stations,
                            std::span<const Measurement> measurements, std::size_t index);

}  // namespace mastwise::reception
