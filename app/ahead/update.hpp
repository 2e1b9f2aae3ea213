#pragma once

#include "app/ahead/actions.hpp"
#include "app/shared/shared.hpp"

#include <optional>

namespace mastwise {

// Applies an action of this feature.
void update(AheadState& state, Shared& shared, const Action& action);

// The places as driven with what they bring, and where each network holds on the way; and the way,
// for other features.
void derive(AheadState& state, Shared& shared, const World& world);

// Whether the places are compared by what is pinned.
bool compares_pinned(const AheadState& state, const Shared& shared);

// The question to the worker; empty unless the way is looked at, or without a network or a place
// ahead. `here`: what the survey asks.
std::optional<RouteQuestion> route_question(const AheadState& state, const Shared& shared,
                                            const StationsQuestion& here);

}  // namespace mastwise
