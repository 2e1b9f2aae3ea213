#pragma once

#include "app/service/worker.hpp"
#include "app/shared/places.hpp"
#include "core/places/gazetteer.hpp"

#include <functional>
#include <memory>

namespace mastwise {

using PlacesWorker = Worker<PlacesQuestion, PlacesAnswer>;

// Searches places by name, and finds near places for positions. The first thread that asks reads
// the gazetteer.
PlacesWorker::Answerer places_answerer(std::function<Result<places::Gazetteer>()> load);

}  // namespace mastwise
