#pragma once

#include "app/ahead/state.hpp"
#include "core/geo/position.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise {

// The way from here through the places ahead.
struct WayAhead {
  std::vector<Position> points = {};     // here first
  std::vector<std::size_t> places = {};  // the index of each place among the points
};

// Between two places of one file the way is the file's; elsewhere it is a straight line.
WayAhead way_ahead(const AheadState& state, const Position& here);

// The name that a file gave to a place; empty if none did.
std::string name_from_file(const AheadState& state, const Position& place);

}  // namespace mastwise
