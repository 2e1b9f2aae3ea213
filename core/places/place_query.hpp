#pragma once

#include "core/places/place_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

// One way to read the typed text: spellings of a name, any of which may match, and the areas of the
// place, all of which must contain it.
struct Reading {
  std::vector<std::string> spellings;  // folded
  // For each condition, whether each area of the table meets it.
  std::vector<std::vector<bool>> conditions;
};

// Every way to read it; see Gazetteer::search.
std::vector<Reading> readings_of(std::string_view typed, const PlaceTable& table);

}  // namespace mastwise::places
