#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/shell/startup.hpp"
#include "app/words.hpp"
#include "app/worker/station_search.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct SurveyOptions {
  std::string at, gear, pattern, surroundings = "open", terrain, catalog;
  bool json = false;
};

template <class T>
json known(const std::optional<T>& value) {
  return value ? json(*value) : json(nullptr);
}

json row_json(const StationRow& row) {
  const reception::Outlook& outlook = *row.outlook;
  json reasons = json::array();
  for (const reception::Reason& reason : row.reasons) {
    reasons.push_back({{"decibel", reason.decibel}, {"text", reason.text}});
  }
  return {{"call_sign", row.station.call_sign},
          {"rf_channel", row.station.rf_channel.number},
          {"distance_m", outlook.distance_m},
          {"bearing_true_deg", outlook.bearing.degrees()},
          {"field_p1812_dbuvm", known(outlook.field_p1812_dbuvm)},
          {"field_itm_dbuvm", known(outlook.field_itm_dbuvm)},
          {"spread_db", known(outlook.spread_db)},
          {"margin_db", known(outlook.margin_db)},
          {"chance", known(outlook.chance_percent)},
          {"word", words::chance_word(outlook)},
          {"mode", to_text(outlook.mode)},
          {"terrain_coverage", outlook.terrain_coverage},
          {"reasons", reasons}};
}

void print_row(const StationRow& row) {
  const reception::Outlook& outlook = *row.outlook;
  std::cout << fmt::format(
      "{:>6} {:<12} {:<14} RF {:<3} {:>9} {:>5} true  {}\n", words::chance_number(outlook),
      words::chance_word(outlook), words::title(row.station), to_text(row.station.rf_channel),
      words::distance(outlook.distance_m, false), words::whole_degrees(outlook.bearing),
      row.reasons.empty() ? "" : row.reasons.front().text);
}

Result<Done> print_survey(const SurveyOptions& options) {
  const auto practice = shell::load_practice();
  if (!practice) return practice.error();
  StationsQuestion question{.from = practice->position, .practice = options.at.empty()};
  if (!options.at.empty()) {
    const auto at = position_argument("--at", options.at);
    if (!at) return at.error();
    question.from = *at;
  }
  if (!options.gear.empty()) {
    const auto gear = gear::preset(options.gear);
    if (!gear) return gear.error();
    question.gear.preset = gear->name;
  }
  const auto pattern = pattern_argument(options.pattern);
  if (!pattern) return pattern.error();
  question.gear.pattern_table = *pattern;
  const auto surroundings = reception::parse_surroundings(options.surroundings);
  if (!surroundings) return surroundings.error();
  question.surroundings = *surroundings;
  const auto catalog = catalog_path(options.catalog);
  if (!catalog) return catalog.error();
  const auto terrain = options.terrain.empty() ? shell::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();

  const Worker::Answerer survey =
      station_answerer({.catalog_path = *catalog,
                        .terrain_folder = *terrain,
                        .practice_stations = practice->stations,
                        .practice_terrain_folder = shell::practice_folder()});
  const StationsAnswer answer = survey(
      question, {.publish = [](const StationsAnswer&) {}, .superseded = [] { return false; }});
  if (!answer.trouble.empty()) return Error{.what = answer.trouble};
  if (options.json) {
    json rows = json::array();
    for (const StationRow& row : answer.rows) rows.push_back(row_json(row));
    std::cout << rows.dump(2) << '\n';
    return Done{};
  }
  if (question.practice) std::cout << "PRACTICE AREA: invented stations and hills\n";
  for (const StationRow& row : answer.rows) print_row(row);
  return Done{};
}

}  // namespace

void add_survey(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<SurveyOptions>();
  CLI::App* verb = program.add_subcommand("survey", "What can be received at a place");
  verb->add_option("--at", options->at, "the place; the practice area if not given");
  verb->add_option("--gear", options->gear, "a preset by its name; an unknown one lists them");
  verb->add_option("--pattern", options->pattern,
                   "the antenna's own pattern: a table of angle_deg and db, or field");
  verb->add_option("--surroundings", options->surroundings,
                   "open, scrub, scattered trees, forest, houses or town; open if not given");
  verb->add_option("--terrain", options->terrain,
                   "the folder of elevation tiles in place of the user's own");
  verb->add_option("--catalog", options->catalog, "the catalog's file in place of the user's own");
  verb->add_flag("--json", options->json, "print a JSON list");
  verb->callback([&chosen, options] { chosen = [options] { return print_survey(*options); }; });
}

}  // namespace mastwise::cli
