#include "app/data/ground.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/pack_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/ground_around.hpp"
#include "app/service/route_file.hpp"
#include "app/service/startup.hpp"
#include "platform/cover_folder.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <iostream>
#include <memory>
#include <set>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct GroundVerbOptions {
  std::vector<std::string> places = {};
  std::string gpx = {};
  HomeOptions home = {};
  bool json = false;
};

Result<std::vector<Position>> way_of_options(const GroundVerbOptions& options) {
  if (!options.gpx.empty()) return way_in_file(options.gpx);
  std::vector<Position> way;
  for (const std::string& text : options.places) {
    const auto place = position_argument("--at", text);
    if (!place) return place.error();
    way.push_back(*place);
  }
  return way;
}

struct Counted {
  std::vector<std::string> missing = {};
  std::size_t squares = 0, with_cover = 0;
  double missing_percent = 0.0;
};

Counted counted_near(const GroundAround& around) {
  Counted counted;
  double near_km2 = 0.0, missing_km2 = 0.0;
  for (const GroundSquare& square : around.squares) {
    if (square.near_km2 == 0.0 || square.held == SquareHeld::Sea) continue;
    ++counted.squares;
    near_km2 += square.near_km2;
    counted.with_cover += square.land_cover ? 1 : 0;
    if (square.held != SquareHeld::Missing) continue;
    missing_km2 += square.near_km2;
    counted.missing.push_back(square.cell);
  }
  if (near_km2 > 0.0) counted.missing_percent = 100.0 * missing_km2 / near_km2;
  return counted;
}

// The verb that fetches the missing squares and what lies between them.
std::string fetch_command(const std::vector<std::string>& missing) {
  int south = 90, north = -90, west = 180, east = -180;
  for (const std::string& name : missing) {
    const auto cell = terrain::cell_named(name);
    if (!cell) continue;
    south = std::min(south, cell->south_deg);
    north = std::max(north, cell->south_deg + 1);
    west = std::min(west, cell->west_deg);
    east = std::max(east, cell->west_deg + 1);
  }
  return fmt::format("mastwise fetch terrain --bbox {},{},{},{}", south, west, north, east);
}

std::string ground_text(const Counted& counted) {
  const double reach_km = kNearGround_m / 1000.0;
  if (counted.missing.empty()) {
    return fmt::format("All {} squares within {:.0f} km have heights; {} have land cover.\n",
                       counted.squares, reach_km, counted.with_cover);
  }
  return fmt::format(
      "{:.0f} % of the ground within {:.0f} km is missing: {} of {} squares\n  {}\n"
      "Land cover: {} of {} squares\nTo get the heights: {}\n"
      "or import files of them with mastwise import terrain, or take a pack.\n",
      counted.missing_percent, reach_km, counted.missing.size(), counted.squares,
      fmt::join(counted.missing, ", "), counted.with_cover, counted.squares,
      fetch_command(counted.missing));
}

template <class Folder>
std::set<terrain::TileCell> cells_in(const std::filesystem::path& path) {
  const auto cells = Folder(path).cells();
  return {cells.begin(), cells.end()};
}

Result<Done> print_ground(const GroundVerbOptions& options) {
  const auto way = way_of_options(options);
  if (!way) return way.error();
  const auto home = home_of(options.home);
  if (!home) return home.error();
  const auto coasts = service::load_borders();
  if (!coasts) return coasts.error();
  const auto around = ground_around(*way, cells_in<platform::TileFolder>(home->terrain),
                                    cells_in<platform::CoverFolder>(home->cover), &*coasts);
  if (!around) {
    return Error{.what = "this way is too long or crosses a pole", .where = "ground"};
  }
  const Counted counted = counted_near(*around);
  if (!options.json) {
    std::cout << ground_text(counted);
    return Done{};
  }
  print({{"reach_m", kNearGround_m},
         {"squares", counted.squares},
         {"squares_with_land_cover", counted.with_cover},
         {"missing_percent", counted.missing_percent},
         {"missing", counted.missing},
         {"fetch", counted.missing.empty() ? json() : json(fetch_command(counted.missing))}});
  return Done{};
}

}  // namespace

void add_ground(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<GroundVerbOptions>();
  CLI::App* verb = program.add_subcommand(
      "ground", "Which squares of heights are missing around a place or along a way");
  verb->add_option("--at", options->places, "a place (repeat for each place of the way)");
  verb->add_option("--gpx", options->gpx, "a GPX file instead: its first route or track");
  add_terrain_option(*verb, options->home);
  add_cover_option(*verb, options->home);
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] {
    if (options->places.empty() && options->gpx.empty()) {
      wrong_usage({.what = "no place is given",
                   .where = "ground",
                   .remedy = "add --at POSITION for each place of the way, or --gpx FILE"});
    }
    chosen = [options] { return print_ground(*options); };
  });
}

}  // namespace mastwise::cli
