#pragma once

#include "core/result.hpp"

#include <functional>

#include <CLI/CLI.hpp>

// The verbs of the command line, one file each. A verb adds its options to the command line and
// sets `chosen` to its task.
namespace mastwise::cli {

using Job = std::function<Result<Done>()>;

void add_card(CLI::App& program, Job& chosen);
void add_compare(CLI::App& program, Job& chosen);
void add_export(CLI::App& program, Job& chosen);
void add_fetch(CLI::App& program, Job& chosen);
void add_gears(CLI::App& program, Job& chosen);
void add_ground(CLI::App& program, Job& chosen);
void add_import(CLI::App& program, Job& chosen);
void add_import_landcover(CLI::App& import, Job& chosen);
void add_import_logbook(CLI::App& import, Job& chosen);
void add_import_programs(CLI::App& import, Job& chosen);
void add_import_terrain(CLI::App& import, Job& chosen);
void add_loss(CLI::App& program, Job& chosen);
void add_plan(CLI::App& program, Job& chosen);
void add_pack(CLI::App& program, Job& chosen);
void add_peak(CLI::App& program, Job& chosen);
void add_places(CLI::App& program, Job& chosen);
void add_replay(CLI::App& program, Job& chosen);
void add_scan(CLI::App& program, Job& chosen);
void add_sound(CLI::App& program, Job& chosen);
void add_survey(CLI::App& program, Job& chosen);
void add_sun(CLI::App& program, Job& chosen);

// All verbs that draw nothing.
inline void add_verbs(CLI::App& program, Job& chosen) {
  for (const auto add : {add_card, add_export, add_fetch, add_ground, add_import, add_loss,
                         add_plan, add_pack, add_peak, add_places, add_replay, add_survey, add_scan,
                         add_compare, add_gears, add_sun, add_sound}) {
    add(program, chosen);
  }
}

}  // namespace mastwise::cli
