#pragma once

#include "app/service/startup.hpp"
#include "app/service/stop_survey.hpp"
#include "app/shared/survey.hpp"

#include <chrono>
#include <string>
#include <utility>
#include <vector>

#include <CLI/CLI.hpp>

namespace mastwise::cli {

// Gear, surroundings and data options of the verbs that compute reception.
struct StopOptions {
  std::string gear, pattern, decodes, surroundings = "open", noise, radio_tower = "none",
                                      cell_tower = "none", leaves = "season", terrain, catalog;
  bool amplifier_off = false, inverter_on = false;
  double heading_error_deg = reception::kUsualHeadingError_deg;
  std::vector<std::string> obstacles;
  std::vector<std::pair<std::string, double>> appliances;  // band, dB
};

void add_stop_options(CLI::App& verb, StopOptions& options);

// The parsed options: a question without a place, and the sources of stations and hills.
struct StopSetting {
  StationsQuestion question;
  SurveySources sources;
  Position practice_position;
};
Result<StopSetting> stop_setting(const StopOptions& options, bool practice);

// The month for leaves by the season.
unsigned month_of(std::chrono::local_days day);

// Puts what your logbook teaches for the question's place and gear into the question, as the
// screens do; nothing in practice or without a logbook.
Result<Done> add_lessons(StationsQuestion& question);

}  // namespace mastwise::cli
