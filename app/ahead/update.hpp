#pragma once

#include "app/ahead/actions.hpp"
#include "app/shared/shared.hpp"

#include <optional>

namespace mastwise {

// Applies an action of this feature.
void update(AheadState& state, Shared& shared, const Action& action);

// The question to the worker; empty while the route is hidden, or without a wanted network or a
// place ahead. `here`: what the survey asks.
std::optional<RouteQuestion> route_question(const AheadState& state, const Shared& shared,
                                            const StationsQuestion& here);

}  // namespace mastwise
