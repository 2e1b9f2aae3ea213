#pragma once

#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::test {

// The bytes of the places and borders that the program ships with, and what is read from them. Fail
// the test when they cannot be read.
std::vector<std::byte> places_bytes();
const places::Gazetteer& gazetteer();
std::vector<std::byte> borders_bytes();
const map::Borders& borders();

}  // namespace mastwise::test
