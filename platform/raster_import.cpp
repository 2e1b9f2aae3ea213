#include "platform/raster_import.hpp"

#include "platform/elevation_raster.hpp"
#include "platform/tile_folder.hpp"
#include "platform/tile_seams.hpp"

#include <algorithm>
#include <cstdint>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using terrain::kVoidSample;
using terrain::Tile;
using terrain::TileCell;

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

class Import {
 public:
  Import(const fs::path& folder, const ImportProgress& progress)
      : tiles_(folder), writer_(folder, kTerrainTiles), progress_(progress) {}

  Result<RasterImport> run(const fs::path& raster);

 private:
  // An error, or whether the cell was finished (false: stopped).
  Result<bool> make_tile(TileCell cell, const ElevationRaster& raster,
                         const ElevationRaster::Progress& progress);

  const TileFolder tiles_;
  TileWriter writer_;
  const ImportProgress& progress_;
  RasterImport result_;
};

Result<RasterImport> Import::run(const fs::path& path) {
  const auto raster = ElevationRaster::open(path);
  if (!raster) return raster.error();
  const auto ready = writer_.start();
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
  auto placed = writer_.place();
  if (!placed) return placed.error();
  result_.written = *std::move(placed);
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
  const auto written = writer_.write(home, made.bytes);
  if (!written) return written.error();
  result_.new_heights += made.new_heights;
  return true;
}

}  // namespace

Result<RasterImport> import_raster(const fs::path& raster, const fs::path& folder,
                                   const ImportProgress& progress) {
  auto done = Import(folder, progress).run(raster);
  if (!done || done->written.empty()) return done;
  for (const TileCell cell : close_seams(folder, done->written)) {
    auto& written = done->written;
    if (std::find(written.begin(), written.end(), cell) == written.end()) written.push_back(cell);
  }
  return done;
}

}  // namespace mastwise::platform
