#pragma once

#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/signal_budget.hpp"

#include <optional>
#include <span>

namespace mastwise::reception {

// The steps between a station's power and its margin at the stop, after Interference::weigh();
// `index`: of the station. std::nullopt if it has no field. What several stations on a channel take
// together is divided between the same and the neighboring channels as the worst of each would
// take alone.
std::optional<SignalBudget> signal_budget(const LinkBudget& budget,
                                          std::span<const Station> stations,
                                          std::span<const Measurement> measurements,
                                          std::size_t index);

}  // namespace mastwise::reception
