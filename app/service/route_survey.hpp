#pragma once

#include "app/model/route.hpp"
#include "app/service/errand.hpp"
#include "app/service/stop_survey.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Surveys places along the route and finds the stretches of each network. `go_on` gets partial
// results and may stop the work; the sheet's `done` is the fraction done.
RouteSheet survey_route(StopSurveyor& surveyor, const RouteQuestion& question,
                        const std::function<bool(const RouteSheet&)>& go_on);

// The same for the session.
std::unique_ptr<Errand> route_errand(SurveySources sources, std::function<void()> wake);

}  // namespace mastwise
