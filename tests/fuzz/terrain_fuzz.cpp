#include "core/terrain/tile.hpp"
#include "platform/tile_folder.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <algorithm>
#include <cmath>
#include <span>

using namespace mastwise;
using terrain::Tile;
using terrain::TileCell;

namespace {

namespace fs = std::filesystem;
constexpr TileCell kCell{.south_deg = 45, .west_deg = 7};

void check_heights(const Tile& tile) {
  for (double at = 0.0; at <= tile.side() - 1; at += 37.3) {
    const double height_m = tile.height_m(at, tile.side() - 1 - at);
    fuzz::require(std::isnan(height_m) || std::fabs(height_m) <= 32768.0);
  }
}

// A file in a folder of its own is a tile with heights, or a problem.
void check_file(const std::string& folder, const std::string& name, std::string_view text,
                bool whole_size) {
  fs::create_directories(folder);
  const fs::path file = fs::path(folder) / name;
  std::ofstream(file, std::ios::binary) << text;
  constexpr std::uintmax_t kBytes = std::uintmax_t{2} * 1201 * 1201;
  if (whole_size) fs::resize_file(file, kBytes);
  const platform::TileFolder tiles(folder);
  const auto tile = tiles.tile(kCell);
  fuzz::require(static_cast<bool>(tile) == tiles.problems().empty());
  fuzz::require(static_cast<bool>(tile) || !whole_size);
  if (tile) check_heights(*tile);
  fs::remove_all(folder);
}

}  // namespace

// Reads the input as a file name, and as the bytes of a tile: too short, of the right size, and
// zipped.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Scratch scratch;
  const std::string_view text = fuzz::text_of(data, size);
  if (const auto cell = terrain::cell_named(text)) {
    fuzz::require(terrain::cell_named(terrain::cell_name(*cell)) == cell);
    fuzz::require(std::clamp(cell->south_deg, -90, 89) == cell->south_deg);
    fuzz::require(std::clamp(cell->west_deg, -180, 179) == cell->west_deg);
  }
  const auto tile = Tile::over(kCell, std::as_bytes(std::span(data, size)));
  fuzz::require(static_cast<bool>(tile) == Tile::side_of_size(size).has_value());
  const std::string folder = scratch.file("tiles");
  check_file(folder, "N45E007.hgt.zip", text, false);
  check_file(folder, "N45E007.hgt", text, size % 2 == 1);
  return 0;
}
