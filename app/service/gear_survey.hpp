#pragma once

#include "app/parking/state.hpp"
#include "app/service/stop_survey.hpp"
#include "app/service/worker.hpp"

#include <functional>

namespace mastwise {

using GearsWorker = Worker<GearsQuestion, GearsAnswer>;

// Surveys the question's place once with each gear, compares them, and finds the sectors to keep
// clear for each. All of a survey depends on the antenna's height and gain, so nothing is shared
// between two gears but the catalog and the tiles. `stop`: whether a newer question waits; the
// answer is then incomplete.
GearsAnswer compare_rig_gears(StopSurveyor& surveyor, const GearsQuestion& question,
                              const std::function<bool()>& stop);

// The same for the session.
GearsWorker::Answerer gears_answerer(SurveySources sources);

}  // namespace mastwise
