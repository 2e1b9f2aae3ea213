#pragma once

#include "core/terrain/tile.hpp"

#include <string>

// Files as a publisher's server has them.
namespace mastwise::test {

// The path of a GLO-90 tile by the publisher's layout: "N44", "W072".
std::string glo_90_path(const std::string& latitude, const std::string& longitude);

// A tile of invented heights as the publisher cuts it: the first sample lies on the north-west
// corner, and the south and east edges belong to the neighbors.
std::string glo_90_bytes(terrain::TileCell cell);

}  // namespace mastwise::test
