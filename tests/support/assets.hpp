#pragma once

#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/zones/zone_map.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::test {

// The bytes of the places, borders and time zones in the assets, and their parsed content. Fail the
// test if they are unreadable.
std::vector<std::byte> places_bytes();
const places::Gazetteer& gazetteer();
std::vector<std::byte> borders_bytes();
const map::Borders& borders();
std::vector<std::byte> zones_bytes();
const zones::ZoneMap& zone_map();

}  // namespace mastwise::test
