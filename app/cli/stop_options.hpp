#pragma once

#include "app/model/stations.hpp"
#include "app/service/startup.hpp"
#include "app/service/stop_survey.hpp"

#include <string>

#include <CLI/CLI.hpp>

namespace mastwise::cli {

// What verbs that ask about reception know of the gear, the surroundings and the data.
struct StopOptions {
  std::string gear, pattern, surroundings = "open", terrain, catalog;
};

void add_stop_options(CLI::App& verb, StopOptions& options);

// The options read: a question without a place, and where stations and hills are.
struct StopSetting {
  StationsQuestion question;
  SurveySources sources;
  Position practice_position;
};
Result<StopSetting> stop_setting(const StopOptions& options, bool practice);

}  // namespace mastwise::cli
