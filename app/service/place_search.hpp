#pragma once

#include "app/service/errand.hpp"
#include "core/places/gazetteer.hpp"

#include <functional>
#include <memory>

namespace mastwise {

// Looks names up, and says positions by places near them. The gazetteer is read by the thread that
// asks first.
std::unique_ptr<Errand> places_errand(std::function<Result<places::Gazetteer>()> load,
                                      std::function<void()> wake);

}  // namespace mastwise
