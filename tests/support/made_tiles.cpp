#include "tests/support/made_tiles.hpp"

#include "tests/support/reference.hpp"

#include <cmath>
#include <cstdint>
#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::test {
namespace {

struct OwningTile {
  std::vector<std::byte> bytes;
  terrain::Tile tile;
};

}  // namespace

std::vector<std::byte> made_tile_bytes(terrain::TileCell cell, int side, const HeightAt& height_m) {
  std::vector<std::byte> bytes;
  bytes.reserve(2 * static_cast<std::size_t>(side) * static_cast<std::size_t>(side));
  const double intervals = side - 1;
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column) {
      const double height =
          height_m(cell.south_deg + 1 - row / intervals, cell.west_deg + column / intervals);
      const auto sample =
          static_cast<std::uint16_t>(static_cast<std::int16_t>(std::lround(height)));
      bytes.push_back(static_cast<std::byte>(sample >> 8));
      bytes.push_back(static_cast<std::byte>(sample & 0xff));
    }
  }
  return bytes;
}

std::shared_ptr<const terrain::Tile> tile_of_bytes(terrain::TileCell cell,
                                                   std::vector<std::byte> bytes) {
  auto tile = terrain::Tile::over(cell, bytes);
  REQUIRE(tile);
  auto owner = std::make_shared<OwningTile>(OwningTile{std::move(bytes), *tile});
  return std::shared_ptr<const terrain::Tile>(owner, &owner->tile);
}

std::shared_ptr<const terrain::Tile> made_tile(terrain::TileCell cell, int side,
                                               const HeightAt& height_m) {
  return tile_of_bytes(cell, made_tile_bytes(cell, side, height_m));
}

std::shared_ptr<const terrain::Tile> read_tile(const std::filesystem::path& path,
                                               terrain::TileCell cell) {
  std::vector<std::byte> bytes;
  for (const char letter : read_file(path)) bytes.push_back(static_cast<std::byte>(letter));
  return tile_of_bytes(cell, std::move(bytes));
}

}  // namespace mastwise::test
