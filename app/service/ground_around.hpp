#pragma once

#include "app/data/ground.hpp"
#include "core/geo/position.hpp"
#include "core/map/borders.hpp"
#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

// What the Data page shows of the ground and of the disk.
namespace mastwise {

// The squares near the way, which begins at the stop, on a plane around its middle. A square
// without a tile that lies wholly at sea is not missing, if coasts are known and the tiles on board
// do not contradict them. Empty without a position or if PROJ refuses.
std::optional<GroundAround> ground_around(const std::vector<Position>& way,
                                          const std::set<terrain::TileCell>& terrain,
                                          const std::set<terrain::TileCell>& cover,
                                          const map::Borders* coasts);

// The bytes of files: those in `ground_folders` with their subfolders, and the catalog with its
// journal. What cannot be read counts as nothing.
DiskUse disk_use(const std::vector<std::string>& ground_folders, const std::string& catalog_path);

}  // namespace mastwise
