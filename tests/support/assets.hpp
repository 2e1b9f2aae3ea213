#pragma once

#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::test {

// The bytes of the places and borders in the assets, and their parsed content. Fail the test if
// they are unreadable.
std::vector<std::byte> places_bytes();
const places::Gazetteer& gazetteer();
std::vector<std::byte> borders_bytes();
const map::Borders& borders();

}  // namespace mastwise::test
