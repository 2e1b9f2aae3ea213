#pragma once

#include "app/aim/state.hpp"
#include "app/shared/shared.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// The directions that are known here now and can check a compass: along the shadow of a plumb line,
// away from the sun, toward the best of the bodies in `sky`, and toward the form's landmark.
std::vector<KnownDirection> known_directions(const Shared& shared,
                                             const std::optional<SkyAhead>& sky);

// What was read along `known`, as a check that holds here.
CompassSight sight_of(const Shared& shared, const KnownDirection& known, double read_deg);

// The form's landmark; `error_m` of its position.
std::optional<Landmark> landmark_of(const Shared& shared);

// How many degrees the ring of an adjustable compass must turn since it was last set; std::nullopt
// if it is right within half of its 1-degree marks, or nobody has set it. Positive: farther east.
std::optional<Turn> ring_turn(const Shared& shared);

// Whether the compass is off by more than three sigmas of the magnetic model and of the check
// together, well clear of the rig: then iron in the ground or the needle itself is the reason.
bool local_anomaly(const Shared& shared);

}  // namespace mastwise
