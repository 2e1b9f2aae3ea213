#include "app/service/country.hpp"

#include "app/service/startup.hpp"

#include <utility>

namespace mastwise {
namespace {

Result<std::unique_ptr<Country>> open_own(const SurveySources& sources) {
  auto catalog = Catalog::open(sources.catalog_path);
  if (!catalog) return catalog.error();
  // Without its coasts the land counts as inland, without land cover as usual country.
  auto borders = service::load_borders();
  const auto cover = service::cover_folder();
  return std::unique_ptr<Country>(
      new Country{*std::move(catalog), platform::TileFolder(sources.terrain_folder),
                  platform::CoverFolder(cover ? *cover : std::string()),
                  borders ? std::optional(*std::move(borders)) : std::nullopt});
}

Result<std::unique_ptr<Country>> open_practice(const SurveySources& sources) {
  auto catalog = Catalog::open(":memory:");
  if (!catalog) return catalog.error();
  const StationTable table{.source = sources.practice_stations.front().provenance.source,
                           .stations = sources.practice_stations};
  const auto filled = catalog->replace_source(table);
  if (!filled) return filled.error();
  return std::unique_ptr<Country>(new Country{*std::move(catalog),
                                              platform::TileFolder(sources.practice_terrain_folder),
                                              platform::CoverFolder({}),
                                              {}});
}

}  // namespace

bool Country::find_cut() {
  const bool tile_cut = tiles.find_cut();
  const bool any = cover.find_cut() || tile_cut;
  cut = cut || any;
  return any;
}

Result<Countries::Visited> Countries::visit(bool practice) {
  std::unique_ptr<Country>& country = at(practice);
  if (!country) {
    auto opened = practice ? open_practice(sources_) : open_own(sources_);
    if (!opened) return opened.error();
    country = *std::move(opened);
  }
  const bool new_tiles = country->tiles.refresh();
  const bool new_cover = country->cover.refresh();
  const bool changed = std::exchange(country->cut, false) || new_tiles || new_cover;
  return Visited{.country = country.get(), .changed = changed};
}

}  // namespace mastwise
