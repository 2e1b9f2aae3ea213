#include "app/cli/area_picture.hpp"
#include "app/cli/arguments.hpp"
#include "app/cli/stop_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/area_work.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"
#include "core/catalog/catalog.hpp"
#include "core/reception/best_spots.hpp"
#include "core/text/words.hpp"

#include <cmath>
#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct ScanOptions {
  std::string at, png;
  std::vector<std::string> stations;
  double radius_km = 5.0;
  std::size_t cells = 200;
  bool json = false;
  StopOptions stop;
};

Result<Station> station_of(const std::string& call_sign, const StopSetting& setting) {
  if (setting.question.practice) {
    return practice_station(setting.sources.practice_stations, call_sign);
  }
  const auto to = destination_argument("", call_sign, setting.sources.catalog_path);
  if (!to) return to.error();
  return *to->station;
}

// The chance of the weakest station in each cell.
Result<reception::ChanceMap> scan_all(const reception::AreaGrid& grid, const StopSetting& setting,
                                      const std::vector<std::string>& call_signs) {
  Countries countries(setting.sources);
  StationsQuestion question = setting.question;
  question.from = grid.stop();
  if (const auto learned = add_lessons(question); !learned) return learned.error();
  const reception::Receiver receiver = receiver_of(question);
  Pool pool;
  AreaWork work(pool);
  return countries.of_whole_land(question.practice, [&]() -> Result<reception::ChanceMap> {
    const auto visited = countries.visit(question.practice);
    if (!visited) return visited.error();
    std::vector<reception::ChanceMap> maps;
    for (const std::string& call_sign : call_signs) {
      const auto station = station_of(call_sign, setting);
      if (!station) return station.error();
      auto scan = reception::AreaScan::of(grid, receiver, *station, visited->country->land());
      if (!scan) return scan.error();
      int told = -1;
      work.complete(*scan, [&](double done) {
        const int tenths = static_cast<int>(10.0 * done);
        if (tenths != told) std::cerr << fmt::format("{}: {} %\n", station->call_sign, 10 * tenths);
        told = tenths;
        return true;
      });
      maps.push_back(reception::chances(*scan));
    }
    return reception::weakest(maps);
  });
}

json chances_json(const reception::ChanceMap& chances) {
  json list = json::array();
  for (const auto& chance : chances) {
    list.push_back(chance ? json(std::round(10.0 * *chance) / 10.0) : json(nullptr));
  }
  return list;
}

json spot_json(const reception::AreaGrid& grid, const reception::Spot& spot) {
  const Position position = grid.position(spot.cell);
  return {{"distance_m", spot.distance_m},           {"bearing_true_deg", spot.bearing.degrees()},
          {"chance", spot.chance_percent},           {"gain", spot.gain_percent},
          {"latitude_deg", position.latitude_deg()}, {"longitude_deg", position.longitude_deg()}};
}

struct Found {
  const reception::AreaGrid& grid;
  const reception::ChanceMap& chances;
  std::optional<double> here;
  std::vector<reception::Spot> spots;
};

void print_json(const Found& found, const ScanOptions& options, bool practice) {
  json spots = json::array();
  for (const auto& spot : found.spots) spots.push_back(spot_json(found.grid, spot));
  const Position stop = found.grid.stop();
  print({{"practice", practice},
         {"stations", options.stations},
         {"latitude_deg", stop.latitude_deg()},
         {"longitude_deg", stop.longitude_deg()},
         {"radius_m", found.grid.radius_m()},
         {"cells", found.grid.side()},
         {"cell_m", found.grid.cell_m()},
         {"order", "rows from north to south, each from west to east"},
         {"chance_at_stop", found.here ? json(*found.here) : json(nullptr)},
         {"best_spots", spots},
         {"chance", chances_json(found.chances)}});
}

void print_text(const Found& found, bool practice) {
  if (practice) std::cout << kPracticeLine;
  std::cout << (found.here ? fmt::format("here {}\n", words::chance_number(*found.here))
                           : "chance here unknown\n");
  for (const auto& spot : found.spots) {
    std::cout << fmt::format("{:>5}  {} at {} true\n", words::chance_number(spot.chance_percent),
                             words::distance(spot.distance_m, false),
                             words::whole_degrees(spot.bearing));
  }
  if (found.here && found.spots.empty()) std::cout << "no place nearby is clearly better\n";
}

Result<Done> print_scan(const ScanOptions& options) {
  const bool practice = options.at.empty();
  const auto setting = stop_setting(options.stop, practice);
  if (!setting) return setting.error();
  const Result<Position> stop =
      practice ? setting->practice_position : position_argument("--at", options.at);
  if (!stop) return stop.error();
  const auto grid = reception::AreaGrid::around(*stop, 1000.0 * options.radius_km, options.cells);
  if (!grid) return grid.error();
  const auto chances = scan_all(*grid, *setting, options.stations);
  if (!chances) return chances.error();

  Found found{*grid, *chances, reception::chance_at_stop(*grid, *chances), {}};
  if (found.here) found.spots = reception::best_spots(*grid, *chances, *found.here);
  if (!options.png.empty()) {
    const auto written = write_area_picture(options.png, *grid, *chances, found.spots);
    if (!written) return written;
  }
  if (options.json) {
    print_json(found, options, practice);
  } else {
    print_text(found, practice);
  }
  return Done{};
}

}  // namespace

void add_scan(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ScanOptions>();
  CLI::App* verb =
      program.add_subcommand("scan", "Find where around a place a station comes in best");
  verb->add_option("--at", options->at, "the place (default: the practice area)");
  verb->add_option("--station", options->stations,
                   "call signs, separated by commas; the weakest counts")
      ->required()
      ->delimiter(',');
  verb->add_option("--radius-km", options->radius_km, "half the side of the square (default: 5)");
  verb->add_option("--cells", options->cells, "cells on a side (default: 200)");
  add_stop_options(*verb, options->stop);
  verb->add_option("--png", options->png, "write a picture to this file");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_scan(*options); }; });
}

}  // namespace mastwise::cli
