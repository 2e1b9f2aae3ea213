#include "app/cli/stop_options.hpp"

#include "app/cli/arguments.hpp"

namespace mastwise::cli {
namespace {

Result<GearChoice> gear_choice(const StopOptions& options) {
  GearChoice choice;
  if (!options.gear.empty()) {
    const auto gear = gear::preset(options.gear);
    if (!gear) return gear.error();
    choice.preset = gear->name;
  }
  const auto pattern = pattern_argument(options.pattern);
  if (!pattern) return pattern.error();
  choice.pattern_table = *pattern;
  return choice;
}

}  // namespace

void add_stop_options(CLI::App& verb, StopOptions& options) {
  verb.add_option("--gear", options.gear, "name of a gear preset; an unknown name lists them all");
  verb.add_option("--pattern", options.pattern,
                  "custom antenna pattern: a table of angle_deg and db or field");
  verb.add_option("--surroundings", options.surroundings,
                  "open, scrub, scattered trees, forest, houses or town (default: open)");
  verb.add_option("--terrain", options.terrain,
                  "folder of elevation tiles to use instead of yours");
  verb.add_option("--catalog", options.catalog, "catalog file to use instead of yours");
}

Result<StopSetting> stop_setting(const StopOptions& options, bool practice) {
  const auto area = service::load_practice();
  if (!area) return area.error();
  const auto gear = gear_choice(options);
  if (!gear) return gear.error();
  const auto surroundings = reception::parse_surroundings(options.surroundings);
  if (!surroundings) return surroundings.error();
  const auto catalog = catalog_path(options.catalog);
  if (!catalog) return catalog.error();
  const auto terrain = options.terrain.empty() ? service::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();
  return StopSetting{
      .question = {.practice = practice, .surroundings = *surroundings, .gear = *gear},
      .sources = {.catalog_path = *catalog,
                  .terrain_folder = *terrain,
                  .practice_stations = area->stations,
                  .practice_terrain_folder = service::practice_folder()},
      .practice_position = area->position};
}

}  // namespace mastwise::cli
