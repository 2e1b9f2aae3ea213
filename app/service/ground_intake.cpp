#include "app/service/ground_intake.hpp"

#include "app/service/browsing.hpp"
#include "app/service/ground_around.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "platform/cover_folder.hpp"
#include "platform/cover_import.hpp"
#include "platform/cover_raster.hpp"
#include "platform/elevation_raster.hpp"
#include "platform/raster_import.hpp"
#include "platform/tile_folder.hpp"

#include <filesystem>
#include <set>

namespace mastwise {
namespace {

using Kind = TableReading::Kind;

std::vector<std::string> names_of(const std::vector<terrain::TileCell>& cells) {
  std::vector<std::string> names;
  for (const terrain::TileCell cell : cells) names.push_back(terrain::cell_name(cell));
  return names;
}

void look_into_cover(TableLook& look, const std::string& path,
                     const std::optional<TableReading>& reading, const GroundFolders& folders) {
  look.reading.kind = Kind::LandCover;
  const auto tables = platform::load_class_tables(folders.class_tables);
  if (!tables) {
    look.trouble = tables.error().message();
    return;
  }
  for (const landcover::ClassTable& table : *tables) look.class_tables.push_back(table.name);
  const auto found = platform::recognize_cover(path, *tables, "");
  if (found) look.reading.classes = (*tables)[*found].name;
  look.known_by =
      found ? words::fill(words::say("Land cover: its name, colors or codes are those of {name}"),
                          {{"name", look.reading.classes}})
            : words::say("Land cover, but it does not say whose classes these are");
  const std::string chosen = reading ? reading->classes : look.reading.classes;
  if (chosen.empty()) {
    look.trouble = words::say("Choose whose classes these are");
  } else if (const auto fits = platform::recognize_cover(path, *tables, chosen); !fits) {
    look.trouble = fits.error().what;
  }
}

Error stopped() {
  return {.what = "the import was stopped"};
}

}  // namespace

TableLook look_into_raster(const std::string& path, const std::optional<TableReading>& reading,
                           const GroundFolders& folders) {
  TableLook look{.file_date = sources::day_written(path)};
  if (platform::CoverRaster::open(path)) {
    look_into_cover(look, path, reading, folders);
    return look;
  }
  look.reading.kind = Kind::Terrain;
  const auto heights = platform::ElevationRaster::open(path);
  if (heights) {
    look.known_by = words::say("A raster of ground heights");
  } else {
    look.trouble = heights.error().what;
  }
  return look;
}

Result<GroundReport> import_ground(const std::string& path, const TableReading& reading,
                                   const GroundFolders& folders,
                                   const std::function<bool(double part)>& progress) {
  if (reading.kind == Kind::Terrain) {
    const auto done = platform::import_raster(path, folders.terrain, progress);
    if (!done) return done.error();
    if (done->stopped) return stopped();
    return GroundReport{.source = std::filesystem::path(path).filename().string(),
                        .cells = names_of(done->written),
                        .filled = done->new_heights};
  }
  const auto tables = platform::load_class_tables(folders.class_tables);
  if (!tables) return tables.error();
  auto done = platform::import_cover(path, folders.cover, *tables, reading.classes, progress);
  if (!done) return done.error();
  if (done->stopped) return stopped();
  return GroundReport{.land_cover = true,
                      .source = done->table,
                      .notice = done->notice,
                      .cells = names_of(done->written),
                      .filled = done->new_areas,
                      .unlisted_codes = done->unlisted_codes};
}

GroundHeld ground_held(const GroundFolders& folders) {
  const platform::TileFolder terrain(folders.terrain);
  const platform::CoverFolder cover(folders.cover);
  GroundHeld held{.terrain_cells = terrain.cells().size(),
                  .cover_cells = cover.cells().size(),
                  .notices = platform::cover_notices(folders.cover)};
  for (const Error& problem : terrain.problems()) held.problems.push_back(problem.message());
  for (const Error& problem : cover.problems()) held.problems.push_back(problem.message());
  return held;
}

std::optional<GroundAround> ground_near(const GroundFolders& folders,
                                        const IntakeQuestion& question,
                                        const map::Borders* coasts) {
  const auto set_of = [](const auto& folder) {
    const auto cells = folder.cells();
    return std::set<terrain::TileCell>(cells.begin(), cells.end());
  };
  const platform::TileFolder terrain(question.practice ? folders.practice_terrain
                                                       : folders.terrain);
  const platform::CoverFolder cover(question.practice ? std::string() : folders.cover);
  return ground_around(question.way, set_of(terrain), set_of(cover),
                       question.practice ? nullptr : coasts);
}

}  // namespace mastwise
