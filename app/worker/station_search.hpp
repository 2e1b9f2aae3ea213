#pragma once

#include "app/worker/worker.hpp"

#include <string>
#include <vector>

namespace mastwise {

// Where the worker finds stations and hills.
struct SurveySources {
  std::string catalog_path;  // the user's stations
  std::string terrain_folder;
  std::vector<Station> practice_stations;
  std::string practice_terrain_folder;
};

// Surveys the stop on all cores: the user's stations over the user's hills, or in the practice area
// its own. Catalogs and tiles are opened by the thread that asks first, and belong to it.
Worker::Answerer station_answerer(SurveySources sources);

}  // namespace mastwise
