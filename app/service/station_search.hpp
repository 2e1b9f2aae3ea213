#pragma once

#include "app/service/errand.hpp"
#include "app/service/stop_survey.hpp"

#include <memory>

namespace mastwise {

using StationsWorker = Worker<StationsQuestion, StationsAnswer>;

// Surveys the stop on all cores: the user's stations over the user's hills, or in the practice area
// its own. Catalogs and tiles are opened by the thread that asks first, and belong to it.
StationsWorker::Answerer station_answerer(SurveySources sources);

// The same for the session.
std::unique_ptr<Errand> stations_errand(SurveySources sources, std::function<void()> wake);

}  // namespace mastwise
