#include "core/reception/compare.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/stop_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/words.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;
using reception::Wish;

struct CompareOptions {
  std::vector<std::string> places, networks, programmes, stations;
  bool practice = false;
  bool json = false;
  StopOptions stop;
};

std::vector<Wish> wishes_of(const CompareOptions& options) {
  std::vector<Wish> wishes;
  for (const std::string& text : options.networks) wishes.push_back({Wish::Kind::network, text});
  for (const std::string& text : options.programmes) {
    wishes.push_back({Wish::Kind::programme, text});
  }
  for (const std::string& text : options.stations) {
    wishes.push_back({Wish::Kind::call_sign, text});
  }
  return wishes;
}

// The whole survey of each place.
Result<std::vector<std::vector<reception::Prospect>>> survey_places(
    const StopSetting& setting, const std::vector<Position>& places) {
  StopSurveyor surveyor(setting.sources);
  const auto visited = surveyor.country(setting.question.practice);
  if (!visited) return visited.error();
  std::vector<std::vector<reception::Prospect>> prospects;
  for (const Position place : places) {
    StationsQuestion question = setting.question;
    question.from = place;
    const auto survey = surveyor.survey(*visited->country, receiver_of(question), {});
    if (!survey) return survey.error();
    prospects.push_back((*survey)->prospects());
  }
  return prospects;
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

Result<Done> print_comparison(const CompareOptions& options) {
  std::vector<Position> places;
  for (const std::string& text : options.places) {
    const auto place = position_argument("--at", text);
    if (!place) return place.error();
    places.push_back(*place);
  }
  const std::vector<Wish> wishes = wishes_of(options);
  if (wishes.empty()) {
    return Error{.what = "nothing is wished",
                 .where = "compare",
                 .remedy = "name a network, a programme or call signs"};
  }
  const auto setting = stop_setting(options.stop, options.practice);
  if (!setting) return setting.error();
  const auto prospects = survey_places(*setting, places);
  if (!prospects) return prospects.error();

  json rows = json::array();
  std::string text = options.practice ? kPracticeLine : "";
  for (const auto& row : reception::compare_places(*prospects, wishes)) {
    json offers = json::array();
    text += fmt::format("{}: the weakest wish {}\n", options.places[row.place],
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
                : "none is known\n";
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
  CLI::App* verb =
      program.add_subcommand("compare", "Places side by side, by what can be received there");
  verb->add_option("--at", options->places, "a place; once for each")->required();
  verb->add_option("--network", options->networks, "a network that is wanted; once for each");
  verb->add_option("--programme", options->programmes,
                   "a programme that is wanted, by its name or virtual channel; once for each");
  verb->add_option("--want", options->stations, "call signs that are wanted, with commas")
      ->delimiter(',');
  verb->add_flag("--practice", options->practice, "the places lie in the practice area");
  add_stop_options(*verb, options->stop);
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_comparison(*options); }; });
}

}  // namespace mastwise::cli
