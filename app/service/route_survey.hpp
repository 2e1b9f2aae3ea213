#pragma once

#include "app/model/route.hpp"
#include "app/service/errand.hpp"
#include "app/service/stop_survey.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Surveys places along the way, and finds the stretches where each network holds. `go_on` is given
// what is known so far and may stop the work; the sheet's `done` tells how far it came.
RouteSheet survey_route(StopSurveyor& surveyor, const RouteQuestion& question,
                        const std::function<bool(const RouteSheet&)>& go_on);

// The same for the session.
std::unique_ptr<Errand> route_errand(SurveySources sources, std::function<void()> wake);

}  // namespace mastwise
