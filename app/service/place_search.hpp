#pragma once

#include "app/service/errand.hpp"
#include "core/places/gazetteer.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Searches places by name, and finds near places for positions. The first thread that asks reads
// the gazetteer.
std::unique_ptr<Errand> places_errand(std::function<Result<places::Gazetteer>()> load,
                                      std::function<void()> wake);

}  // namespace mastwise
