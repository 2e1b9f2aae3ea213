#pragma once

#include "core/catalog/catalog.hpp"
#include "core/map/borders.hpp"
#include "core/reception/land.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "platform/cover_folder.hpp"
#include "platform/tile_folder.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// Paths of stations and hills.
struct SurveySources {
  std::string catalog_path = {};  // the user's stations
  std::string terrain_folder = {};
  std::vector<Station> practice_stations = {};
  std::string practice_terrain_folder = {};
};

// Stations and the land around them.
struct Country {
  Catalog catalog;
  platform::TileFolder tiles;
  platform::CoverFolder cover;
  std::optional<map::Borders> coasts;  // not of the practice area, whose land is invented

  bool cut = false;  // a tile, since the last visit

  reception::Land land() const { return {tiles, coasts ? &*coasts : nullptr, &cover}; }

  // Whether a tile was cut short since the last call, so that what was computed meanwhile may be
  // wrong.
  bool find_cut();
};

// The user's stations and hills, and the practice area's. The first thread that asks opens the
// catalogs and tiles and owns them.
class Countries {
 public:
  explicit Countries(SurveySources sources) : sources_(std::move(sources)) {}

  // `changed`: its tiles differ from the last call.
  struct Visited {
    Country* country;
    bool changed;
  };
  Result<Visited> visit(bool practice);

  // The result of `make`, which visits that land and computes from it. It runs again for as long as
  // a tile was cut short meanwhile, so that no result has heights that are not there.
  template <class Make>
  auto of_whole_land(bool practice, const Make& make) {
    while (true) {
      auto made = make();
      const auto& country = at(practice);
      if (!country || !country->find_cut()) return made;
    }
  }

 private:
  std::unique_ptr<Country>& at(bool practice) { return practice ? practice_ : own_; }

  SurveySources sources_;
  std::unique_ptr<Country> own_, practice_;
};

}  // namespace mastwise
