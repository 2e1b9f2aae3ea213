#include "app/cli/arguments.hpp"
#include "app/cli/place_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/gear_survey.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct GearsOptions {
  PlaceOptions place = {};
  std::vector<std::string> with, networks, stations;
  bool json = false;
};

// The gear of --gear and those of --with, the lowest first; without --with, every preset.
Result<std::vector<GearChoice>> gears_of(const GearsOptions& options, const GearChoice& first) {
  Settings rig{.gear = first};
  std::vector<std::string> names = options.with;
  if (names.empty()) {
    for (const gear::Gear& preset : gear::presets()) names.push_back(preset.name);
  }
  for (const std::string& name : names) {
    const auto preset = gear::preset(name);
    if (!preset) return preset.error();
    rig.other_gears.push_back({.preset = preset->name});
  }
  return rig_gears(rig);
}

// The stations in reach with one of the wanted call signs.
Result<std::vector<StationKey>> keys_of(const GearsOptions& options, StopSurveyor& surveyor,
                                        const StationsQuestion& question) {
  std::vector<StationKey> keys;
  if (options.stations.empty()) return keys;
  const auto country = surveyor.countries().visit(question.practice);
  if (!country) return country.error();
  const auto near = country->country->catalog.nearest(*question.from, kReachM, kMostStations);
  if (!near) return near.error();
  for (const std::string& call_sign : options.stations) {
    const std::size_t before = keys.size();
    for (const NearStation& one : *near) {
      if (words::same_word(one.station.call_sign, call_sign)) keys.push_back(key_of(one.station));
    }
    if (keys.size() > before) continue;
    return Error{.what = "no station " + call_sign + " is in reach of this place",
                 .where = "--want",
                 .remedy = "run survey to list the stations in reach"};
  }
  return keys;
}

json arc_json(const HeadingArc& arc) {
  return {{"from_true_deg", arc.from.degrees()}, {"length_deg", arc.length_deg}};
}

json sector_json(const KeptSector& sector) {
  json stations = json::array();
  for (const SectorStation& station : sector.stations) {
    stations.push_back(
        {{"title", station.title},
         {"carries", station.carries},
         {"bearing_true_deg", station.bearing.degrees()},
         {"chance", station.chance_percent ? json(*station.chance_percent) : json()}});
  }
  json told = arc_json(sector.arc);
  told["lower_than_m"] = sector.harmless_m > 0.0 ? json(sector.harmless_m) : json();
  told["stations"] = std::move(stations);
  return told;
}

std::vector<HeadingArc> arcs_of(const GearRow& row) {
  std::vector<HeadingArc> arcs;
  for (const KeptSector& sector : row.sectors) arcs.push_back(sector.arc);
  return arcs;
}

json row_json(const GearRow& row, const GearsAnswer& answer) {
  json networks = json::array(), sectors = json::array(), free = json::array(),
       noses = json::array();
  for (std::size_t i = 0; i < answer.networks.size(); ++i) {
    const GearOffer& offer = row.offers[i];
    networks.push_back({{"network", answer.networks[i]},
                        {"call_sign", offer.call_sign},
                        {"chance", offer.chance_percent ? json(*offer.chance_percent) : json()}});
  }
  for (const KeptSector& sector : row.sectors) sectors.push_back(sector_json(sector));
  for (const HeadingArc& arc : gaps_between(arcs_of(row))) free.push_back(arc_json(arc));
  const std::array sides{neighbor_sector(true), neighbor_sector(false)};
  for (const HeadingArc& arc : noses_that_clear(arcs_of(row), sides)) {
    noses.push_back(arc_json(arc));
  }
  return {{"gear", row.name},       {"height_m", row.height_m},
          {"likely", row.networks}, {"likely_without_network", row.unnamed},
          {"networks", networks},   {"only_with_it", row.only},
          {"keep_clear", sectors},  {"free", free},
          {"noses", noses}};
}

std::string arc_text(const HeadingArc& arc) {
  return words::whole_degrees(arc.from) + " to " +
         words::whole_degrees(Bearing<True>::degrees(arc.from.degrees() + arc.length_deg)) +
         " true";
}

std::string sectors_text(const GearRow& row) {
  std::string text;
  for (const KeptSector& sector : row.sectors) {
    text += fmt::format("  keep clear {}:", arc_text(sector.arc));
    for (const SectorStation& station : sector.stations) {
      text += fmt::format(" {} at {}{}", station.title, words::whole_degrees(station.bearing),
                          &station == &sector.stations.back() ? "" : ",");
    }
    text += sector.harmless_m > 0.0
                ? fmt::format("; lower than {} at {}\n", words::height(sector.harmless_m, false),
                              words::height(kNearObstacle_m, false))
                : fmt::format("; nothing within {}\n", words::height(kNearObstacle_m, false));
  }
  const auto free = gaps_between(arcs_of(row));
  if (!row.sectors.empty() && !free.empty()) {
    text += fmt::format("  free {}\n", arc_text(free.front()));
  }
  const std::array sides{neighbor_sector(true), neighbor_sector(false)};
  if (row.sectors.empty()) return text;
  const auto noses = noses_that_clear(arcs_of(row), sides);
  if (noses.empty()) return text + "  no nose heading keeps neighbors on both sides outside\n";
  for (const HeadingArc& arc : noses) text += fmt::format("  nose {}\n", arc_text(arc));
  return text;
}

std::string comparison_text(const GearsAnswer& answer) {
  std::string text;
  for (const GearRow& row : answer.rows) {
    text += fmt::format("{}: {} of {} networks", row.name, row.networks, answer.networks.size());
    if (answer.unnamed > 0) {
      text += fmt::format(", {} of {} stations without a network", row.unnamed, answer.unnamed);
    }
    text += '\n';
    for (std::size_t i = 0; i < answer.networks.size(); ++i) {
      const GearOffer& offer = row.offers[i];
      text += fmt::format(
          "  {:<20}{:>8}  {}\n", answer.networks[i],
          offer.chance_percent ? words::chance_number(*offer.chance_percent) : "unknown",
          offer.call_sign);
    }
    if (!row.only.empty() && answer.rows.size() > 1) {
      text += fmt::format("  only with it: {}\n", fmt::join(row.only, ", "));
    }
    text += sectors_text(row);
  }
  text += answer.enough ? fmt::format("{} is enough\n", answer.rows[*answer.enough].name)
                        : "no gear brings in everything that is likely with some gear\n";
  return text;
}

Result<Done> print_gears(const GearsOptions& options) {
  const auto place = place_of(options.place);
  if (!place) return place.error();
  GearsQuestion question{.here = place->question};
  const auto gears = gears_of(options, place->question.gear);
  if (!gears) return gears.error();
  question.gears = *gears;
  for (const GearChoice& gear : question.gears) {
    StationsQuestion with = place->question;
    with.gear = gear;
    if (const auto added = add_lessons(with); !added) return added.error();
    question.learned.push_back(with.learned);
  }
  StopSurveyor surveyor(place->sources);
  const auto keys = keys_of(options, surveyor, place->question);
  if (!keys) return keys.error();
  question.here.pinned = *keys;
  question.here.pinned_networks = options.networks;
  const GearsAnswer answer = compare_rig_gears(surveyor, question, [] { return false; });
  if (!answer.trouble.empty()) return Error{.what = answer.trouble};
  if (!options.json) {
    std::cout << (place->question.practice ? kPracticeLine : "") << comparison_text(answer);
    return Done{};
  }
  json rows = json::array();
  for (const GearRow& row : answer.rows) rows.push_back(row_json(row, answer));
  print({{"practice", place->question.practice},
         {"networks", answer.networks},
         {"stations_without_network", answer.unnamed},
         {"enough", answer.enough ? json(answer.rows[*answer.enough].name) : json()},
         {"gears", rows}});
  return Done{};
}

}  // namespace

void add_gears(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<GearsOptions>();
  CLI::App* verb = program.add_subcommand(
      "gears", "Compare antennas at a place, and list the sectors to keep clear when parking");
  add_place_options(*verb, options->place);
  verb->add_option("--with", options->with,
                   "a gear preset to compare (repeat for each; default: all of them)");
  verb->add_option("--network", options->networks, "a wanted network (repeat for each)");
  verb->add_option("--want", options->stations, "wanted call signs, separated by commas")
      ->delimiter(',');
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_gears(*options); }; });
}

}  // namespace mastwise::cli
