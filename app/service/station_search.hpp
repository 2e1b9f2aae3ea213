#pragma once

#include "app/service/stop_survey.hpp"
#include "app/service/worker.hpp"

#include <memory>

namespace mastwise {

using StationsWorker = Worker<StationsQuestion, StationsAnswer>;

// Surveys the stop on all cores, with the user's stations and hills or the practice area's. The
// first thread that asks opens the catalogs and tiles and owns them.
StationsWorker::Answerer station_answerer(SurveySources sources);

// The same for the session.

}  // namespace mastwise
