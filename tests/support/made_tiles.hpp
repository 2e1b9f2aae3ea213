#pragma once

#include "core/terrain/tile.hpp"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

namespace mastwise::test {

// Height in meters at a latitude and a longitude in degrees; rounded to whole meters.
using HeightAt = std::function<double(double latitude_deg, double longitude_deg)>;

// The bytes of an .hgt file of a cell. `side` is 1201 or 3601.
std::vector<std::byte> made_tile_bytes(terrain::TileCell cell, int side, const HeightAt& height_m);

// The same as a tile that owns its bytes.
std::shared_ptr<const terrain::Tile> made_tile(terrain::TileCell cell, int side,
                                               const HeightAt& height_m);

// A tile that owns the given bytes. Fails the test if they are not a tile.
std::shared_ptr<const terrain::Tile> tile_of_bytes(terrain::TileCell cell,
                                                   std::vector<std::byte> bytes);

// The tile in an .hgt file. Fails the test if it is not a tile.
std::shared_ptr<const terrain::Tile> read_tile(const std::filesystem::path& path,
                                               terrain::TileCell cell);

}  // namespace mastwise::test
