#pragma once

#include "app/ahead/state.hpp"
#include "app/service/stop_survey.hpp"
#include "app/service/worker.hpp"

#include <functional>
#include <memory>

namespace mastwise {

using RouteWorker = Worker<RouteQuestion, RouteSheet>;

// Surveys places along the route for each network, and finds where heights are missing. `go_on`
// gets partial results and may stop the work; the sheet's `done` is the fraction done.
RouteSheet survey_route(StopSurveyor& surveyor, const RouteQuestion& question,
                        const std::function<bool(const RouteSheet&)>& go_on);

// The same for the session.
RouteWorker::Answerer route_answerer(SurveySources sources);

}  // namespace mastwise
