#pragma once

#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/zones/zone_map.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise::test {

// The places, borders and time zones in the assets as they are in their files, and read. Fail the
// test if they are unreadable.
std::vector<std::byte> places_bytes();
const places::Gazetteer& gazetteer();
std::vector<std::byte> borders_bytes();
const map::Borders& borders();
std::string zones_file();
const zones::ZoneMap& zone_map();

}  // namespace mastwise::test
