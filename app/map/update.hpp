#pragma once

#include "app/map/actions.hpp"
#include "app/shared/shared.hpp"

#include <optional>
#include <vector>

namespace mastwise {

// Applies an action of this feature. The map opens on the stations likely here.
void update(MapState& state, Shared& shared, const Action& action);

// Turns the map: it follows north or the nose by itself. Keeps the way to the held place.
void derive(MapState& state, const Shared& shared);

// The ground behind ridges as the sheet has it, if that is of the present target; else null.
const reception::RidgeShadow* shadow_of_target(const MapState& state, const Shared& shared);

// The questions to the workers; empty while the map is hidden. `here`: what the survey asks.
std::optional<MapQuestion> map_question(const MapState& state, const Shared& shared,
                                        const StationsQuestion& here);
std::optional<AreaQuestion> area_question(const MapState& state, const Shared& shared,
                                          const StationsQuestion& here);
// The stations for the area scan: the pinned ones, else the target.
std::vector<Station> area_stations(const Shared& shared);

}  // namespace mastwise
