#include "app/cli/arguments.hpp"
#include "app/cli/place_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/station_search.hpp"
#include "app/words/chances.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct SurveyOptions {
  PlaceOptions place = {};
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
    reasons.push_back({{"kind", to_text(reason.kind())},
                       {"decibel", reason.decibel},
                       {"gain_percent", reason.gain_percent},
                       {"text", words::reason(reason, false)}});
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
          {"decoding", to_text(outlook.decoding)},
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
      row.reasons.empty() ? "" : words::reason(row.reasons.front(), false));
}

Result<Done> print_survey(const SurveyOptions& options) {
  const auto place = place_of(options.place);
  if (!place) return place.error();
  const StationsWorker::Answerer survey = station_answerer(place->sources);
  const StationsAnswer answer = survey(place->question, {.publish = [](const StationsAnswer&) {},
                                                         .superseded = [] { return false; }});
  if (!answer.trouble.empty()) return Error{.what = answer.trouble};
  if (options.json) {
    json rows = json::array();
    for (const StationRow& row : answer.rows) rows.push_back(row_json(row));
    std::cout << rows.dump(2) << '\n';
    return Done{};
  }
  if (place->question.practice) std::cout << kPracticeLine;
  for (const StationRow& row : answer.rows) print_row(row);
  return Done{};
}

}  // namespace

void add_survey(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<SurveyOptions>();
  CLI::App* verb = program.add_subcommand("survey", "List the stations that a place receives");
  add_place_options(*verb, options->place);
  verb->add_flag("--json", options->json, "print a JSON list");
  verb->callback([&chosen, options] { chosen = [options] { return print_survey(*options); }; });
}

}  // namespace mastwise::cli
