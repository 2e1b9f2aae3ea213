#pragma once

#include "app/map/state.hpp"
#include "app/service/country.hpp"
#include "app/service/worker.hpp"
#include "core/map/borders.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Called once, from the worker's thread.
using LoadBorders = std::function<Result<map::Borders>()>;

using MapWorker = Worker<MapQuestion, MapSheet>;
using AreaWorker = Worker<AreaQuestion, AreaSheet>;

// Makes the map sheet around the stop: shaded ground, coasts and borders, stations.
MapWorker::Answerer map_answerer(SurveySources sources, LoadBorders load_borders);

// Scans the area around the stop on all cores and publishes partial results.
AreaWorker::Answerer area_answerer(SurveySources sources);

}  // namespace mastwise
