#pragma once

#include "app/cli/stop_options.hpp"

namespace mastwise::cli {

// Options of the verbs that survey a stop.
struct PlaceOptions {
  std::string at = {};
  StopOptions stop = {};
};
void add_place_options(CLI::App& verb, PlaceOptions& options);

// The given stop with the sources of its stations and hills; the practice area if no place is
// given.
Result<StopSetting> place_of(const PlaceOptions& options);

}  // namespace mastwise::cli
