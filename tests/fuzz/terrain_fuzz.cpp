#include "core/terrain/tile.hpp"
#include "platform/tile_folder.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <span>
#include <string>
#include <string_view>

#include <unistd.h>

// Reads the input as a file name, as a tile's bytes, and as a zipped tile in a folder.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, std::size_t size) {
  namespace fs = std::filesystem;
  using namespace mastwise;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  if (const auto cell = terrain::cell_named(text)) {
    if (terrain::cell_named(terrain::cell_name(*cell)) != cell) std::abort();
  }
  const auto tile =
      terrain::Tile::over({.south_deg = 45, .west_deg = 7}, std::as_bytes(std::span(data, size)));
  if (static_cast<bool>(tile) != terrain::Tile::side_of_size(size).has_value()) std::abort();

  static const fs::path folder =
      fs::temp_directory_path() / ("mastwise-terrain-fuzz-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "N45E007.hgt.zip", std::ios::binary) << text;
  const platform::TileFolder tiles(folder);
  const auto unpacked = tiles.tile({.south_deg = 45, .west_deg = 7});
  if (static_cast<bool>(unpacked) == !tiles.problems().empty()) std::abort();
  fs::remove_all(folder);
  return 0;
}
