#pragma once

#include "app/cli/stop_options.hpp"

namespace mastwise::cli {

// What the verbs ask that look around from a stop.
struct PlaceOptions {
  std::string at = {};
  StopOptions stop = {};
};
void add_place_options(CLI::App& verb, PlaceOptions& options);

// The stop that is meant, with where its stations and hills are; the practice area if no place is
// given.
Result<StopSetting> place_of(const PlaceOptions& options);

}  // namespace mastwise::cli
