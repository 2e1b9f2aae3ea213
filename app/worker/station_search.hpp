#pragma once

#include "app/worker/stop_survey.hpp"
#include "app/worker/worker.hpp"

namespace mastwise {

// Surveys the stop on all cores: the user's stations over the user's hills, or in the practice area
// its own. Catalogs and tiles are opened by the thread that asks first, and belong to it.
Worker::Answerer station_answerer(SurveySources sources);

}  // namespace mastwise
