#include "core/reception/compare.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/stop_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/route_file.hpp"
#include "app/service/route_survey.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;
using reception::Wish;

struct CompareOptions {
  std::vector<std::string> places, networks, programs, stations;
  std::string gpx;
  double step_km = 5.0, floor_percent = kUsualFloor_percent;
  bool practice = false;
  bool json = false;
  StopOptions stop;
};

std::vector<Wish> wishes_of(const CompareOptions& options) {
  std::vector<Wish> wishes;
  for (const std::string& text : options.networks) wishes.push_back({Wish::Kind::network, text});
  for (const std::string& text : options.programs) {
    wishes.push_back({Wish::Kind::program, text});
  }
  for (const std::string& text : options.stations) {
    wishes.push_back({Wish::Kind::call_sign, text});
  }
  return wishes;
}

// The whole survey of each place.
Result<std::vector<std::vector<reception::Prospect>>> survey_places(
    const StopSetting& setting, const std::vector<Position>& places) {
  using Surveys = std::vector<std::vector<reception::Prospect>>;
  StopSurveyor surveyor(setting.sources);
  const bool practice = setting.question.practice;
  return surveyor.countries().of_whole_land(practice, [&]() -> Result<Surveys> {
    const auto visited = surveyor.countries().visit(practice);
    if (!visited) return visited.error();
    Surveys prospects;
    for (const Position place : places) {
      StationsQuestion question = elsewhere(setting.question, place);
      if (const auto added = add_lessons(question); !added) return added.error();
      const auto survey = surveyor.survey(*visited->country, receiver_of(question), {});
      if (!survey) return survey.error();
      prospects.push_back((*survey)->prospects());
    }
    return prospects;
  });
}

json offer_json(const std::optional<reception::Offer>& offer,
                const std::vector<reception::Prospect>& prospects) {
  if (!offer) return nullptr;
  const Station& station = prospects[offer->prospect].station;
  return {{"call_sign", station.call_sign},
          {"rf_channel", station.rf_channel.number},
          {"chance", offer->chance_percent},
          {"distance_m", offer->distance_m},
          {"bearing_true_deg", offer->bearing.degrees()}};
}

json row_json(const RouteRow& row, const std::vector<reception::Stretch>& above) {
  json chances = json::array(), stretches = json::array();
  for (const auto& chance : row.chances) {
    chances.push_back({{"at_km", chance.at_km},
                       {"chance", chance.chance_percent ? json(*chance.chance_percent) : json()}});
  }
  for (const auto& stretch : above) {
    stretches.push_back({{"from_km", stretch.from_km},
                         {"to_km", stretch.to_km},
                         {"least_chance", stretch.least_percent},
                         {"mean_chance", stretch.mean_percent}});
  }
  return {{"network", row.network}, {"stretches", stretches}, {"chances", chances}};
}

// Prints the stretches of a GPX route where each network comes in.
Result<Done> print_route(const CompareOptions& options, const StopSetting& setting) {
  const auto points = way_in_file(options.gpx);
  if (!points) return points.error();
  StopSurveyor surveyor(setting.sources);
  const RouteSheet sheet = survey_route(surveyor,
                                        {.here = setting.question,
                                         .points = *points,
                                         .networks = options.networks,
                                         .step_km = options.step_km},
                                        [](const RouteSheet&) { return true; });
  if (!sheet.trouble.empty()) return Error{.what = sheet.trouble};
  json rows = json::array();
  std::string text = options.practice ? kPracticeLine : "";
  text += fmt::format("{:.1f} km; {:.0f} % and up:\n", sheet.length_km, options.floor_percent);
  for (const RouteRow& row : sheet.rows) {
    const auto above = reception::stretches_above(row.chances, options.floor_percent);
    rows.push_back(row_json(row, above));
    text += fmt::format("{}:{}\n", row.network, above.empty() ? " nowhere" : "");
    for (const auto& stretch : above) {
      text += fmt::format("  from km {:.1f} to {:.1f}, {:.0f} % at least\n", stretch.from_km,
                          stretch.to_km, stretch.least_percent);
    }
  }
  if (options.json) {
    print({{"practice", options.practice},
           {"length_km", sheet.length_km},
           {"floor_percent", options.floor_percent},
           {"networks", rows}});
  } else {
    std::cout << text;
  }
  return Done{};
}

Result<Done> print_comparison(const CompareOptions& options) {
  std::vector<Position> places;
  for (const std::string& text : options.places) {
    const auto place = position_argument("--at", text);
    if (!place) return place.error();
    places.push_back(*place);
  }
  const std::vector<Wish> wishes = wishes_of(options);
  const auto setting = stop_setting(options.stop, options.practice);
  if (!setting) return setting.error();
  if (!options.gpx.empty()) return print_route(options, *setting);
  const auto prospects = survey_places(*setting, places);
  if (!prospects) return prospects.error();

  json rows = json::array();
  std::string text = options.practice ? kPracticeLine : "";
  for (const auto& row : reception::compare_places(*prospects, wishes)) {
    json offers = json::array();
    text += fmt::format("{}: weakest choice {}\n", options.places[row.place],
                        words::chance_number(row.weakest_percent));
    for (std::size_t i = 0; i < wishes.size(); ++i) {
      const auto& offer = row.offers[i];
      const json told = offer_json(offer, (*prospects)[row.place]);
      offers.push_back({{"wish", wishes[i].text}, {"offer", told}});
      text += fmt::format("  {:<20}", wishes[i].text);
      text +=
          offer ? fmt::format("{:>5}  {} at {} true\n", words::chance_number(offer->chance_percent),
                              told.at("call_sign").get<std::string>(),
                              words::whole_degrees(offer->bearing))
                : "no station known\n";
    }
    const Position place = places[row.place];
    rows.push_back({{"at", options.places[row.place]},
                    {"latitude_deg", place.latitude_deg()},
                    {"longitude_deg", place.longitude_deg()},
                    {"weakest_chance", row.weakest_percent},
                    {"mean_chance", row.mean_percent},
                    {"granted", row.granted},
                    {"offers", offers}});
  }
  if (options.json) {
    print({{"practice", options.practice}, {"places", rows}});
  } else {
    std::cout << text;
  }
  return Done{};
}

}  // namespace

void add_compare(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<CompareOptions>();
  CLI::App* verb = program.add_subcommand("compare", "Compare places by what they receive");
  verb->add_option("--at", options->places, "a place (repeat for each)");
  verb->add_option("--gpx", options->gpx, "a GPX file instead of places: its first route or track");
  verb->add_option("--step-km", options->step_km, "distance between surveys along the route")
      ->check(CLI::Range(0.1, 1000.0));
  verb->add_option("--floor", options->floor_percent, "chance to keep along the route, in percent")
      ->check(CLI::Range(1.0, 99.0));
  verb->add_option("--network", options->networks, "a wanted network (repeat for each)");
  verb->add_option("--program", options->programs,
                   "a wanted program, by name or virtual channel (repeat for each)");
  verb->add_option("--want", options->stations, "wanted call signs, separated by commas")
      ->delimiter(',');
  verb->add_flag("--practice", options->practice, "use places in the practice area");
  add_stop_options(*verb, options->stop);
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] {
    if (wishes_of(*options).empty()) {
      wrong_usage({.what = "nothing to compare by",
                   .where = "compare",
                   .remedy = "add --network, --program or --want"});
    }
    if (options->places.empty() && options->gpx.empty()) {
      wrong_usage({.what = "no place given",
                   .where = "compare",
                   .remedy = "add --at POSITION for each place, or --gpx FILE"});
    }
    chosen = [options] { return print_comparison(*options); };
  });
}

}  // namespace mastwise::cli
