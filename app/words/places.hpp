#pragma once

#include "core/geo/notation.hpp"
#include "core/places/gazetteer.hpp"

#include <string>

namespace mastwise::words {

// The credit that the license of the place names requires wherever they are shown.
const char* places_source();

// Where the map's lines and the borders of time zones come from, with their licenses.
const char* map_sources();

// "Bend, OR", "Paris, France": a place and its region or country.
std::string place(const places::PopulatedPlace& place);
// A position relative to a place: "12 mi NE of Bend, OR", "near Bend, OR" within 1 mi or km.
std::string near_place(const places::NearPlace& near, bool miles);
// The same without the place, to be written above it: "12 mi NE of", "Near".
std::string near_what(const places::NearPlace& near, bool miles);
std::string notation(Notation notation);  // "Degrees, minutes"

}  // namespace mastwise::words
