#include "app/service/map_maker.hpp"

#include "core/map/borders.hpp"
#include "core/map/hillshade.hpp"
#include "core/map/projection.hpp"
#include "core/reception/ridge_shadow.hpp"
#include "core/reception/transmitter_height.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace mastwise {
namespace {

class MapMaker {
 public:
  MapMaker(SurveySources sources, LoadBorders load_borders, LoadPlaces load_places)
      : countries_(std::move(sources)),
        load_borders_(std::move(load_borders)),
        load_places_(std::move(load_places)) {}
  MapSheet answer(const MapQuestion& question, const MapWorker::Work& work);

 private:
  Result<Done> add_lines(MapSheet& sheet, const map::Projection& projection);
  Result<Done> add_stations(MapSheet& sheet, Country& country) const;
  Result<Done> add_towns(MapSheet& sheet, const map::Projection& projection);
  Result<Done> add_ground(MapSheet& sheet, const map::Projection& projection, Country& country,
                          const MapWorker::Work& work);
  Result<Done> fill(MapSheet& sheet, const MapWorker::Work& work);

  Countries countries_;
  LoadBorders load_borders_;
  LoadPlaces load_places_;
  std::optional<map::Borders> borders_;
  std::optional<MapSheet> last_;  // whole
};

Result<Done> MapMaker::add_lines(MapSheet& sheet, const map::Projection& projection) {
  if (!borders_) {
    auto borders = load_borders_();
    if (!borders) return borders.error();
    borders_ = *std::move(borders);
  }
  sheet.lines = borders_->on_plane(projection, sheet.question.radius_m);
  return Done{};
}

Result<Done> MapMaker::add_stations(MapSheet& sheet, Country& country) const {
  constexpr std::size_t kMost = 20'000;
  const MapQuestion& question = sheet.question;
  const auto near = country.catalog.nearest(question.from, question.radius_m, kMost);
  if (!near) return near.error();
  for (const NearStation& station : *near) {
    sheet.stations.push_back(plane_point(station.distance_m, station.bearing));
  }
  return Done{};
}

// The state of a place by the three towns around it, which must agree: near a border they do not.
// Empty also outside the USA, since the map has no borders of other countries' divisions.
std::string region_at(map::PlanePoint at, const std::vector<MapTown>& towns,
                      const std::vector<std::string>& regions) {
  struct Near {
    double away_m = std::numeric_limits<double>::infinity();
    std::size_t town = 0;
  };
  std::array<Near, 3> nearest;  // the nearest first
  for (std::size_t i = 0; i < towns.size(); ++i) {
    const double away_m =
        std::hypot(towns[i].at.east_m - at.east_m, towns[i].at.north_m - at.north_m);
    if (away_m >= nearest.back().away_m) continue;
    nearest.back() = {away_m, i};
    std::sort(nearest.begin(), nearest.end(),
              [](const Near& a, const Near& b) { return a.away_m < b.away_m; });
  }
  if (towns.size() < nearest.size()) return {};
  const std::string& region = regions[nearest.front().town];
  const bool agree = std::all_of(nearest.begin(), nearest.end(),
                                 [&](const Near& near) { return regions[near.town] == region; });
  return agree ? region : std::string();
}

// Twelve rows of places where a name may stand.
std::vector<MapRegion> regions_of(const MapSheet& sheet, const std::vector<std::string>& regions) {
  constexpr int kRows = 12;
  const double step_m = 2.0 * sheet.question.radius_m / kRows;
  std::vector<MapRegion> found;
  for (int row = 0; row < kRows; ++row) {
    for (int column = 0; column < kRows; ++column) {
      const map::PlanePoint at{(column + 0.5) * step_m - sheet.question.radius_m,
                               sheet.question.radius_m - (row + 0.5) * step_m};
      const std::string name = region_at(at, sheet.towns, regions);
      if (name.empty()) continue;
      const auto known = std::find_if(found.begin(), found.end(),
                                      [&](const MapRegion& region) { return region.name == name; });
      if (known != found.end()) {
        known->within.push_back(at);
      } else {
        found.push_back({.name = name, .within = {at}});
      }
    }
  }
  return found;
}

// A map without names is better than none, so trouble with the gazetteer is told, and the ground
// is drawn.
Result<Done> MapMaker::add_towns(MapSheet& sheet, const map::Projection& projection) {
  constexpr std::size_t kMost = 500;
  const auto gazetteer = load_places_();
  if (!gazetteer) return gazetteer.error();
  std::vector<std::string> regions;  // of the towns
  for (const places::PopulatedPlace& place :
       gazetteer->largest_within(sheet.question.from, sheet.question.radius_m, kMost)) {
    const auto at = projection.to_plane(place.position);
    if (!at) continue;
    sheet.towns.push_back({.name = place.name, .at = *at, .people = place.population.value_or(0)});
    regions.push_back(place.country == "US" ? gazetteer->region_name(place) : "");
  }
  sheet.regions = regions_of(sheet, regions);
  return Done{};
}

// The ground as the target's waves reach it; nothing without the height of its antenna.
std::optional<reception::RidgeShadow> shadow_of(const MapQuestion& question,
                                                const map::Projection& projection,
                                                const terrain::TileSource& tiles) {
  if (!question.target) return std::nullopt;
  const Station& station = *question.target;
  const auto ground_m = terrain::ground_height_m(tiles, station.position);
  const auto height_m = reception::height_over_tile_m(station, tiles);
  const auto channel = channel_slot(station.raster, station.rf_channel);
  if (!ground_m || !height_m || !channel) return std::nullopt;
  constexpr double kMostCells = 384.0, kLeastCell_m = 30.0;
  const double radius_m = std::min(question.radius_m, kShadow_m);
  const double cell_m = std::max(kLeastCell_m, 2.0 * radius_m / kMostCells);
  const reception::Tower tower{station.position, *ground_m + *height_m, channel->center_mhz};
  auto shadow = reception::ridge_shadow(tiles, projection, tower, question.antenna_m,
                                        static_cast<int>(2.0 * radius_m / cell_m), cell_m);
  if (!shadow) return std::nullopt;  // the station is beyond the map's plane
  return *std::move(shadow);
}

// Cells finer than the tiles' 30 m show no more detail.
map::ReliefGrid relief_grid(double radius_m) {
  constexpr double kMostCells = 768.0, kLeastCell_m = 15.0;
  const double cell_m = std::max(kLeastCell_m, 2.0 * radius_m / kMostCells);
  const int cells = static_cast<int>(2.0 * radius_m / cell_m);
  return {.columns = cells, .rows = cells, .meters_per_cell = cell_m};
}

// Wide cells flatten slopes, so heights are exaggerated to keep hills visible.
map::Light light(const map::ReliefGrid& grid) {
  constexpr double kAsTheyAre_m = 30.0, kMost = 10.0;
  return {.vertical_scale = std::clamp(grid.meters_per_cell / kAsTheyAre_m, 1.5, kMost)};
}

// Publishes the lines and names at once, and the ground after shading.
Result<Done> MapMaker::add_ground(MapSheet& sheet, const map::Projection& projection,
                                  Country& country, const MapWorker::Work& work) {
  if (const auto added = add_lines(sheet, projection); !added) return added;
  if (const auto added = add_stations(sheet, country); !added) return added;
  const auto named = add_towns(sheet, projection);
  work.publish(sheet);
  const map::ReliefGrid grid = relief_grid(sheet.question.radius_m);
  auto relief = map::shade_relief(country.tiles, projection, grid, light(grid));
  if (!relief) return relief.error();
  sheet.relief = *std::move(relief);
  return named;
}

Result<Done> MapMaker::fill(MapSheet& sheet, const MapWorker::Work& work) {
  const auto visited = countries_.visit(sheet.question.practice);
  if (!visited) return visited.error();
  const auto projection = map::Projection::around(sheet.question.from);
  if (!projection) return projection.error();
  if (last_ && !visited->changed && same_ground(last_->question, sheet.question)) {
    MapQuestion question = std::move(sheet.question);
    question.from = last_->question.from;  // else many small steps would move the ground
    sheet = *last_;
    sheet.question = std::move(question);
    sheet.shadow.reset();  // that of an earlier target
  } else {
    const auto added = add_ground(sheet, *projection, *visited->country, work);
    if (!added) return added;
  }
  sheet.shadow = shadow_of(sheet.question, *projection, visited->country->tiles);
  last_ = sheet;
  return Done{};
}

MapSheet MapMaker::answer(const MapQuestion& question, const MapWorker::Work& work) {
  return countries_.of_whole_land(question.practice, [&] {
    MapSheet sheet{.question = question};
    if (const auto filled = fill(sheet, work); !filled) sheet.trouble = filled.error().message();
    return sheet;
  });
}

}  // namespace

MapWorker::Answerer map_answerer(SurveySources sources, LoadBorders load_borders,
                                 LoadPlaces load_places) {
  return [maker = std::make_shared<MapMaker>(std::move(sources), std::move(load_borders),
                                             std::move(load_places))](const MapQuestion& question,
                                                                      const MapWorker::Work& work) {
    return maker->answer(question, work);
  };
}

}  // namespace mastwise
