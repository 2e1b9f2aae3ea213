#pragma once

#include "core/geo/notation.hpp"
#include "core/places/gazetteer.hpp"

#include <string>

namespace mastwise::words {

// "Bend, OR", "Paris, France": a place with what tells it from others of its name.
std::string place(const places::Place& place);
// Where a position is, seen from a place: "12 mi NE of Bend, OR", "near Bend, OR" within 1 mi or
// km.
std::string near_place(const places::NearPlace& near, bool miles);
std::string notation(Notation notation);  // "Degrees, minutes"

}  // namespace mastwise::words
