#pragma once

#include "app/service/country.hpp"
#include "app/service/errand.hpp"
#include "core/map/borders.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Called once, from the worker's thread.
using LoadBorders = std::function<Result<map::Borders>()>;

// Makes the map sheet around the stop: shaded ground, coasts and borders, stations.
std::unique_ptr<Errand> map_errand(SurveySources sources, LoadBorders load_borders,
                                   std::function<void()> wake);

// Scans the area around the stop on all cores and publishes partial results.
std::unique_ptr<Errand> area_errand(SurveySources sources, std::function<void()> wake);

}  // namespace mastwise
