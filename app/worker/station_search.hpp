#pragma once

#include "app/worker/worker.hpp"

#include <string>
#include <vector>

namespace mastwise {

// Answers from the user's catalog, or in the practice area from its stations. The catalogs are
// opened by the thread that asks first, and belong to it.
Worker::Answerer station_answerer(std::string catalog_path, std::vector<Station> practice);

}  // namespace mastwise
