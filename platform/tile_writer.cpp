#include "platform/tile_writer.hpp"

#include "platform/atomic_save.hpp"

#include <string>
#include <system_error>
#include <utility>

namespace mastwise::platform {

namespace fs = std::filesystem;
using terrain::TileCell;

TileWriter::TileWriter(fs::path folder, const TileNaming& naming)
    : folder_(std::move(folder)),
      workbench_(folder_ / ".import"),
      naming_(naming),
      index_(index_tiles(folder_, naming)) {
  clear();
}

TileWriter::~TileWriter() {
  clear();
}

void TileWriter::clear() {
  std::error_code ignored;
  fs::remove_all(workbench_, ignored);
}

Result<Done> TileWriter::start() {
  std::error_code failed;
  fs::create_directories(workbench_, failed);
  if (!failed) return Done{};
  return Error{.what = "cannot create a folder: " + failed.message(),
               .where = workbench_.string(),
               .remedy = "choose a folder that you may write to"};
}

Result<Done> TileWriter::write(TileCell cell, std::span<const std::byte> bytes) {
  const auto name = final_name(cell);
  if (!name) return name.error();
  const fs::path unfinished = workbench_ / (terrain::cell_name(cell) + std::string(naming_.end));
  const auto written = write_durably(unfinished, bytes);
  if (!written) return written.error();
  finished_.push_back({.cell = cell, .written = unfinished, .final_name = *name});
  return Done{};
}

Result<std::vector<TileCell>> TileWriter::place() {
  std::vector<TileCell> cells;
  for (const Finished& tile : finished_) {
    const auto placed = put_in_place(tile.written, tile.final_name);
    if (!placed) return placed.error();
    cells.push_back(tile.cell);
  }
  return cells;
}

// A plain tile keeps its file; a plain one supersedes a zipped one.
Result<fs::path> TileWriter::final_name(TileCell cell) const {
  const auto known = index_.files.find(cell);
  if (known != index_.files.end() && !known->second.zipped) return known->second.path;
  fs::path name = folder_ / (terrain::cell_name(cell) + std::string(naming_.end));
  std::error_code unknown;
  if (!fs::exists(name, unknown)) return name;
  return Error{.what = "a file that is not a tile has the name of a tile to write",
               .where = name.string(),
               .remedy = "move it elsewhere and import again"};
}

TileCell folded(TileCell cell) {
  return {.south_deg = cell.south_deg, .west_deg = (cell.west_deg + 540) % 360 - 180};
}

}  // namespace mastwise::platform
