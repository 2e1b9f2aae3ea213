#include "app/words/places.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/startup.hpp"
#include "app/words/units.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct PlacesOptions {
  std::string name, near, nearest;
  std::size_t most = 20;
  bool json = false;
};

json place_json(const places::PopulatedPlace& place) {
  return {{"name", place.name},
          {"country", place.country},
          {"country_name", place.country_name},
          {"admin", place.admin},
          {"region", place.region},
          {"population", place.population ? json(*place.population) : json(nullptr)},
          {"latitude_deg", place.position.latitude_deg()},
          {"longitude_deg", place.position.longitude_deg()}};
}

Result<Done> print_nearest(const places::Gazetteer& gazetteer, const PlacesOptions& options) {
  const auto at = position_argument("--nearest", options.nearest);
  if (!at) return at.error();
  const auto near = gazetteer.nearest_place(*at);
  if (!near) return Error{.what = "the list of places is empty"};
  const std::string text = words::near_place(*near, true);
  if (!options.json) {
    std::cout << text << " (" << words::distance(near->distance_m, false) << ")\n";
    return Done{};
  }
  json object = place_json(near->place);
  object["distance_m"] = near->distance_m;
  object["bearing_true_deg"] = near->bearing.degrees();  // from the place toward the position
  object["text"] = text;
  print(object);
  return Done{};
}

void print_row(const places::FoundPlace& found) {
  const auto& population = found.place.population;
  std::cout << fmt::format("{:<36} {:>10}  {}", words::place(found.place),
                           population ? fmt::format("{}", *population) : "unknown",
                           format_position(found.place.position, Notation::Decimal));
  if (found.way) {
    std::cout << fmt::format("  {:>9} {:>5} true", words::distance(found.way->distance_m, true),
                             words::whole_degrees(found.way->bearing));
  }
  std::cout << '\n';
}

Result<Done> print_found(const places::Gazetteer& gazetteer, const PlacesOptions& options) {
  std::optional<Position> near;
  if (!options.near.empty()) {
    const auto at = position_argument("--near", options.near);
    if (!at) return at.error();
    near = *at;
  }
  json rows = json::array();
  for (const places::FoundPlace& found : gazetteer.search(options.name, options.most, near)) {
    if (!options.json) {
      print_row(found);
      continue;
    }
    rows.push_back(place_json(found.place));
    if (!found.way) continue;
    rows.back()["distance_m"] = found.way->distance_m;
    rows.back()["bearing_true_deg"] = found.way->bearing.degrees();
  }
  if (options.json) print(rows);
  return Done{};
}

Result<Done> print_places(const PlacesOptions& options) {
  const auto gazetteer = service::load_places();
  if (!gazetteer) return gazetteer.error();
  return options.nearest.empty() ? print_found(*gazetteer, options)
                                 : print_nearest(*gazetteer, options);
}

}  // namespace

void add_places(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<PlacesOptions>();
  CLI::App* verb =
      program.add_subcommand("places", "Find towns by name, or the one near a position");
  verb->add_option("name", options->name,
                   "the start of a name, then a state or country: \"Bend OR\", \"Paris, FR\"");
  verb->add_option("--near", options->near, "list near places first, with distance and bearing");
  verb->add_option("--nearest", options->nearest, "print the place that best describes a position");
  verb->add_option("--most", options->most, "how many at most (default: 20)");
  verb->add_flag("--json", options->json, "print JSON: a list, or one object for --nearest");
  verb->callback([&chosen, options] {
    if (options->name.empty() == options->nearest.empty()) {
      wrong_usage(
          {.what = "give the start of a name, or --nearest with a position", .where = "places"});
    }
    chosen = [options] { return print_places(*options); };
  });
}

}  // namespace mastwise::cli
