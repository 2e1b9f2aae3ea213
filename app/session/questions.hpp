#pragma once

#include "app/session/model.hpp"

#include <optional>

// The questions to the workers now, each from all that it depends on. Empty: nothing to ask.
namespace mastwise {

// It differs from stations->question if the list is old.
StationsQuestion stations_question(const Model& model);
std::optional<MapQuestion> map_question(const Model& model);
std::optional<AreaQuestion> area_question(const Model& model);
std::optional<RouteQuestion> route_question(const Model& model);
std::optional<GearsQuestion> gears_question(const Model& model);
// For the gazetteer: the typed name, and the positions shown.
std::optional<PlacesQuestion> places_question(const Model& model);
// While the sheet has been opened.
std::optional<IntakeQuestion> intake_question(const Model& model);

}  // namespace mastwise
