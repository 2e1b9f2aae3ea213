#pragma once

#include "app/service/packs.hpp"

#include <map>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>

namespace mastwise::cli {

// The ground of a pack: around a place, or a box.
struct GroundOptions {
  std::string around = {}, box = {};
  double radius_km = 250.0;
};
void add_ground_options(CLI::App& verb, GroundOptions& options);
Result<packs::Ground> ground_of(const GroundOptions& options);

// The user's data, or others to use instead.
struct HomeOptions {
  std::string catalog = {}, terrain = {}, cover = {};
};
void add_catalog_option(CLI::App& verb, HomeOptions& options);
void add_terrain_option(CLI::App& verb, HomeOptions& options);
void add_cover_option(CLI::App& verb, HomeOptions& options);
Result<packs::Home> home_of(const HomeOptions& options);

// "terrain=Copernicus GLO-90;2021;its license" for each; parts may be left out at the end.
Result<std::map<pack::PartKind, pack::Origin>> origins_of(const std::vector<std::string>& texts);

}  // namespace mastwise::cli
