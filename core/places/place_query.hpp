#pragma once

#include "core/places/place_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

// One way to understand what was typed: the spellings of a name, any of which will do, and the
// areas in which the place lies, all of which must hold it.
struct Reading {
  std::vector<std::string> spellings;  // folded
  // For each condition: per area of the table, whether it meets it.
  std::vector<std::vector<bool>> conditions;
};

// Every way to understand it; see Gazetteer::search.
std::vector<Reading> readings_of(std::string_view typed, const PlaceTable& table);

}  // namespace mastwise::places
