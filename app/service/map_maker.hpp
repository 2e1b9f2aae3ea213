#pragma once

#include "app/map/state.hpp"
#include "app/service/country.hpp"
#include "app/service/worker.hpp"
#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Called once each, from the worker's thread.
using LoadBorders = std::function<Result<map::Borders>()>;
using LoadPlaces = std::function<Result<places::Gazetteer>()>;

using MapWorker = Worker<MapQuestion, MapSheet>;
using AreaWorker = Worker<AreaQuestion, AreaSheet>;

// Makes the map sheet around the stop: coasts and borders, stations, towns, shaded ground, and what
// of it lies behind ridges as seen from the target. Publishes each part as it is known. If only the
// target has changed, the rest of the last sheet is used again.
MapWorker::Answerer map_answerer(SurveySources sources, LoadBorders load_borders,
                                 LoadPlaces load_places);

// Scans the area around the stop on all cores and publishes partial results.
AreaWorker::Answerer area_answerer(SurveySources sources);

}  // namespace mastwise
