#pragma once

#include "core/landcover/cover_source.hpp"

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace mastwise::test {

// The class of an area, counted from the south-west corner, both 0 to 1,199.
using CoverAt = std::function<landcover::CoverClass(int north, int east)>;

// The bytes of a .cover file of a cell.
std::vector<std::byte> made_cover_bytes(terrain::TileCell cell, const CoverAt& cover,
                                        const std::vector<std::string>& notices = {});

// The same as a tile that owns its bytes.
std::shared_ptr<const landcover::CoverTile> made_cover(terrain::TileCell cell,
                                                       const CoverAt& cover);

}  // namespace mastwise::test
