#pragma once

#include "core/catalog/catalog.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "platform/tile_folder.hpp"

#include <memory>
#include <string>
#include <vector>

namespace mastwise {

// Where stations and hills are found.
struct SurveySources {
  std::string catalog_path = {};  // the user's stations
  std::string terrain_folder = {};
  std::vector<Station> practice_stations = {};
  std::string practice_terrain_folder = {};
};

// Stations and their hills.
struct Country {
  Catalog catalog;
  platform::TileFolder tiles;
};

// The user's own country and the practice area. Catalogs and tiles are opened by the thread that
// asks first, and belong to it.
class Countries {
 public:
  explicit Countries(SurveySources sources) : sources_(std::move(sources)) {}

  // `changed` says that its tiles are others than when it was last asked for.
  struct Visited {
    Country* country;
    bool changed;
  };
  Result<Visited> visit(bool practice);

 private:
  SurveySources sources_;
  std::unique_ptr<Country> own_, practice_;
};

}  // namespace mastwise
