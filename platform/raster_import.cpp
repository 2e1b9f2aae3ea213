#include "platform/raster_import.hpp"

#include "platform/atomic_save.hpp"
#include "platform/elevation_raster.hpp"
#include "platform/tile_folder.hpp"
#include "platform/tile_index.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <system_error>
#include <utility>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::kVoidSample;
using terrain::Tile;
using terrain::TileCell;

TileCell folded(TileCell cell) {
  return {.south_deg = cell.south_deg, .west_deg = (cell.west_deg + 540) % 360 - 180};
}

struct MadeTile {
  std::vector<std::byte> bytes;
  std::size_t new_heights = 0;
};

// Keeps the heights of `before`; its voids, or all samples if it is empty, come from the raster.
MadeTile merge(const std::vector<std::int16_t>& samples, int side, const Tile* before) {
  MadeTile made;
  made.bytes.reserve(2 * samples.size());
  auto from_raster = samples.begin();
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column, ++from_raster) {
      std::int16_t sample = before != nullptr ? before->sample(row, column) : kVoidSample;
      if (sample == kVoidSample) {
        sample = *from_raster;
        made.new_heights += sample != kVoidSample ? 1 : 0;
      }
      made.bytes.push_back(static_cast<std::byte>(static_cast<std::uint16_t>(sample) >> 8));
      made.bytes.push_back(static_cast<std::byte>(sample & 0xff));
    }
  }
  return made;
}

// A hidden folder beside the tiles for unfinished work; always removed at the end.
class Workbench {
 public:
  explicit Workbench(const fs::path& folder) : path_(folder / ".import") { clear(); }
  ~Workbench() { clear(); }
  Workbench(const Workbench&) = delete;
  Workbench& operator=(const Workbench&) = delete;

  Result<Done> make() {
    std::error_code failed;
    fs::create_directories(path_, failed);
    if (!failed) return Done{};
    return Error{.what = "cannot create a folder: " + failed.message(),
                 .where = path_.string(),
                 .remedy = "choose a folder that you may write to"};
  }
  const fs::path& path() const { return path_; }

 private:
  void clear() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  fs::path path_;
};

struct Finished {
  TileCell cell;
  fs::path written;
  fs::path final_name;
};

class Import {
 public:
  Import(const fs::path& folder, const ImportProgress& progress)
      : folder_(folder),
        index_(index_tiles(folder, kTerrainTiles)),
        tiles_(folder),
        workbench_(folder),
        progress_(progress) {}

  Result<RasterImport> run(const fs::path& raster);

 private:
  // An error, or whether the cell was finished (false: stopped).
  Result<bool> make_tile(TileCell cell, const ElevationRaster& raster,
                         const ElevationRaster::Progress& progress);
  Result<fs::path> final_name(TileCell cell) const;

  const fs::path folder_;
  const TileIndex index_;
  const TileFolder tiles_;
  Workbench workbench_;
  const ImportProgress& progress_;
  std::vector<Finished> finished_;
  RasterImport result_;
};

Result<RasterImport> Import::run(const fs::path& path) {
  const auto raster = ElevationRaster::open(path);
  if (!raster) return raster.error();
  const auto ready = workbench_.make();
  if (!ready) return ready.error();

  const auto cell_count = static_cast<double>(raster->cells().size());
  double cells_done = 0.0;
  for (const TileCell cell : raster->cells()) {
    const auto done = make_tile(cell, *raster, [&](double fraction) {
      return progress_((cells_done + fraction) / cell_count);
    });
    if (!done) return done.error();
    if (!*done) {
      result_.stopped = true;
      result_.new_heights = 0;
      return result_;
    }
    cells_done += 1.0;
  }
  for (const Finished& tile : finished_) {
    const auto placed = put_in_place(tile.written, tile.final_name);
    if (!placed) return placed.error();
    result_.written.push_back(tile.cell);
  }
  return result_;
}

Result<bool> Import::make_tile(TileCell cell, const ElevationRaster& raster,
                               const ElevationRaster::Progress& progress) {
  const TileCell home = folded(cell);
  const auto before = tiles_.tile(home);
  const int side = before ? before->side() : raster.suitable_side();
  const auto samples = raster.samples(cell, side, progress);
  if (!samples) return samples.error();
  if (samples->empty()) return false;
  const MadeTile made = merge(*samples, side, before.get());
  if (made.new_heights == 0) return true;

  const auto name = final_name(home);
  if (!name) return name.error();
  const fs::path unfinished = workbench_.path() / (terrain::cell_name(home) + ".hgt");
  const auto written = write_durably(unfinished, made.bytes);
  if (!written) return written.error();
  finished_.push_back({.cell = home, .written = unfinished, .final_name = *name});
  result_.new_heights += made.new_heights;
  return true;
}

// A plain tile keeps its file; a plain one supersedes a zipped one.
Result<fs::path> Import::final_name(TileCell cell) const {
  const auto known = index_.files.find(cell);
  if (known != index_.files.end() && !known->second.zipped) return known->second.path;
  fs::path name = folder_ / (terrain::cell_name(cell) + ".hgt");
  std::error_code unknown;
  if (!fs::exists(name, unknown)) return name;
  return Error{.what = "a file that is not a tile has the name of a tile to write",
               .where = name.string(),
               .remedy = "move it elsewhere and import again"};
}

}  // namespace

Result<RasterImport> import_raster(const fs::path& raster, const fs::path& folder,
                                   const ImportProgress& progress) {
  return Import(folder, progress).run(raster);
}

}  // namespace mastwise::platform
