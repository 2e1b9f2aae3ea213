#include "app/service/map_maker.hpp"

#include "core/map/borders.hpp"
#include "core/map/hillshade.hpp"
#include "core/map/projection.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

class MapMaker {
 public:
  MapMaker(SurveySources sources, LoadBorders load_borders)
      : countries_(std::move(sources)), load_borders_(std::move(load_borders)) {}
  MapSheet answer(const MapQuestion& question, const MapWorker::Work& work);

 private:
  Result<Done> add_lines(MapSheet& sheet, const map::Projection& projection);
  Result<Done> add_stations(MapSheet& sheet, Country& country) const;
  Result<Done> fill(MapSheet& sheet, const MapWorker::Work& work);

  Countries countries_;
  LoadBorders load_borders_;
  std::optional<map::Borders> borders_;
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

// Publishes the lines at once, and the ground after shading.
Result<Done> MapMaker::fill(MapSheet& sheet, const MapWorker::Work& work) {
  const auto visited = countries_.visit(sheet.question.practice);
  if (!visited) return visited.error();
  const auto projection = map::Projection::around(sheet.question.from);
  if (!projection) return projection.error();
  if (const auto added = add_lines(sheet, *projection); !added) return added;
  if (const auto added = add_stations(sheet, *visited->country); !added) return added;
  work.publish(sheet);
  const map::ReliefGrid grid = relief_grid(sheet.question.radius_m);
  auto relief = map::shade_relief(visited->country->tiles, *projection, grid, light(grid));
  if (!relief) return relief.error();
  sheet.relief = *std::move(relief);
  return Done{};
}

MapSheet MapMaker::answer(const MapQuestion& question, const MapWorker::Work& work) {
  MapSheet sheet{.question = question};
  if (const auto filled = fill(sheet, work); !filled) sheet.trouble = filled.error().message();
  return sheet;
}

}  // namespace

MapWorker::Answerer map_answerer(SurveySources sources, LoadBorders load_borders) {
  return [maker = std::make_shared<MapMaker>(std::move(sources), std::move(load_borders))](
             const MapQuestion& question, const MapWorker::Work& work) {
    return maker->answer(question, work);
  };
}

}  // namespace mastwise
