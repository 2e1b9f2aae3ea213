#include "app/cli/stop_options.hpp"

#include "app/cli/arguments.hpp"
#include "app/shared/stop.hpp"
#include "core/logbook/learning.hpp"
#include "core/logbook/logbook.hpp"
#include "core/text/words.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"
#include "platform/time_zones.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include <fmt/format.h>

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
  choice.amplifier = !options.amplifier_off;
  if (!options.decodes.empty()) {
    const auto decoders = gear::parse_decoders(options.decodes);
    if (!decoders) return decoders.error();
    choice.decoders = *decoders;
  }
  return choice;
}

Result<reception::ObstacleRing> ring_of(const StopOptions& options) {
  reception::ObstacleRing ring;
  for (const std::string& text : options.obstacles) {
    const auto named = reception::parse_side(text);
    if (!named) return named.error();
    ring.sides[named->side] = named->what;
  }
  return ring;
}

Result<std::vector<gear::ApplianceNoise>> appliances_of(const StopOptions& options) {
  constexpr std::array kBands{Band::low_vhf, Band::high_vhf, Band::uhf};
  constexpr double kMost_db = 60.0;
  std::vector<gear::ApplianceNoise> appliances;
  for (const auto& [text, rise_db] : options.appliances) {
    const auto band = words::parse_choice(text, kBands, "a band");
    if (!band) return band.error();
    if (!(rise_db >= 0.0 && rise_db <= kMost_db)) {
      return Error{.what = fmt::format("an appliance cannot raise the noise by {} dB", rise_db),
                   .where = "--appliance",
                   .remedy = "give 0 to 60 dB"};
    }
    appliances.push_back({.name = text, .band = *band, .rise = {.db = rise_db}});
  }
  return appliances;
}

}  // namespace

void add_stop_options(CLI::App& verb, StopOptions& options) {
  verb.add_option("--gear", options.gear, "name of a gear preset; an unknown name lists them all");
  verb.add_option("--pattern", options.pattern,
                  "custom antenna pattern: a table of angle_deg and db or field");
  verb.add_flag("--amplifier-off", options.amplifier_off, "the amplifier has no power");
  verb.add_option(
      "--decodes", options.decodes,
      "what the TV decodes, separated by commas: ATSC 1.0, ATSC 3.0, ATSC 3.0 encrypted, "
      "DVB-T, DVB-T2, DVB-T2 HEVC, ISDB-T (default: the usual ones of the channel plan)");
  verb.add_option("--surroundings", options.surroundings,
                  "open, scrub, scattered trees, forest, houses or town (default: open)");
  verb.add_option("--noise", options.noise,
                  "city, residential, rural or quiet rural (default: as the surroundings)");
  verb.add_flag("--inverter-on", options.inverter_on, "the rig's inverter or charger is on");
  verb.add_option("--appliance", options.appliances,
                  "how far an appliance that is on raises the noise, as the noise hunt found: band "
                  "and decibels, UHF 3.5; may be repeated")
      ->allow_extra_args(false);
  verb.add_option("--radio-tower", options.radio_tower,
                  "how near an FM tower stands: none, in sight, near (5 km) or beside "
                  "(1.6 km)");
  verb.add_option("--cell-tower", options.cell_tower,
                  "how near a cell tower stands: none, in sight, near (400 m) or "
                  "beside (160 m)");
  verb.add_option("--leaves", options.leaves,
                  "trees around the stop in leaf: on, off, or by the season (default: season)");
  verb.add_option("--obstacle", options.obstacles,
                  "what stands on one side of the rig, as DIRECTION:KIND or with distance and "
                  "height, NE:trees:20m:12m; KIND is open, trees, rig or hill; may be repeated")
      ->allow_extra_args(false);
  verb.add_option("--heading-error", options.heading_error_deg,
                  "pointing error, one standard deviation in degrees; the screens use that of "
                  "your way to point (default: 6)")
      ->check(CLI::Range(0.0, 90.0));
  verb.add_option("--terrain", options.terrain,
                  "folder of elevation tiles to use instead of yours");
  verb.add_option("--catalog", options.catalog, "catalog file to use instead of yours");
}

unsigned month_of(std::chrono::local_days day) {
  return static_cast<unsigned>(std::chrono::year_month_day(day).month());
}

Result<StopSetting> stop_setting(const StopOptions& options, bool practice) {
  const auto area = service::load_practice();
  if (!area) return area.error();
  const auto gear = gear_choice(options);
  if (!gear) return gear.error();
  const auto surroundings = reception::parse_surroundings(options.surroundings);
  if (!surroundings) return surroundings.error();
  std::optional<gear::NoiseEnvironment> noise;
  if (!options.noise.empty()) {
    const auto parsed = gear::parse_noise_environment(options.noise);
    if (!parsed) return parsed.error();
    noise = *parsed;
  }
  const auto leaves = reception::parse_leaf_choice(options.leaves);
  if (!leaves) return leaves.error();
  const auto radio_tower = gear::parse_tower_range(options.radio_tower);
  if (!radio_tower) return radio_tower.error();
  const auto cell_tower = gear::parse_tower_range(options.cell_tower);
  if (!cell_tower) return cell_tower.error();
  const auto appliances = appliances_of(options);
  if (!appliances) return appliances.error();
  const auto ring = ring_of(options);
  if (!ring) return ring.error();
  const auto catalog = catalog_path(options.catalog);
  if (!catalog) return catalog.error();
  const TimeZone tablet = platform::tablet_zone().value_or(utc_zone());
  std::error_code ignored;
  if (!options.terrain.empty() && !std::filesystem::is_directory(options.terrain, ignored)) {
    return Error{.what = "this folder does not exist",
                 .where = "--terrain " + options.terrain,
                 .remedy = "name a folder of elevation tiles"};
  }
  const auto terrain = options.terrain.empty() ? service::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();
  return StopSetting{.question = {.practice = practice,
                                  .surroundings = *surroundings,
                                  .leaves = *leaves,
                                  .month = month_of(local_day(platform::utc_now(), tablet)),
                                  .gear = *gear,
                                  .heading_error_deg = options.heading_error_deg,
                                  .noise = noise,
                                  .inverter_on = options.inverter_on,
                                  .towers = {*radio_tower, *cell_tower},
                                  .ring = *ring,
                                  .appliances = *appliances},
                     .sources = {.catalog_path = *catalog,
                                 .terrain_folder = *terrain,
                                 .practice_stations = area->stations,
                                 .practice_terrain_folder = service::practice_folder()},
                     .practice_position = area->position};
}

Result<Done> add_lessons(StationsQuestion& question) {
  if (question.practice || !question.from) return Done{};
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  const std::string path = *folder + "/logbook";
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) return Done{};
  auto logbook = Logbook::open(path);
  if (!logbook) return logbook.error();
  const auto stops = logbook->stops();
  if (!stops) return stops.error();
  const auto outcomes = logbook->outcomes();
  if (!outcomes) return outcomes.error();
  const auto here = std::find_if(stops->begin(), stops->end(), [&](const StopRecord& stop) {
    return same_stop(stop.position, *question.from);
  });
  const auto corrections = learning::learn(learning::trials(*outcomes))
                               .corrections(gear_of(question.gear).name,
                                            here == stops->end() ? std::string() : here->id);
  std::transform(corrections.begin(), corrections.end(), question.learned.begin(),
                 learning::as_bias);
  return Done{};
}

}  // namespace mastwise::cli
