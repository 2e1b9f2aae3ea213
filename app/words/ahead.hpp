#pragma once

#include "core/places/gazetteer.hpp"

#include <cstddef>
#include <string>

// Places ahead and the way there, in words.
namespace mastwise::words {

// A distance along the way: "mi 42", "km 68".
std::string along(double at_km, bool miles);
// "119 mi, straight line"; roads are longer.
std::string straight_line(double length_km, bool miles);
// "All 4 hold to mi 30".
std::string all_hold(std::size_t networks, double to_km, double length_km, bool miles);
// "mi 102–119".
std::string stretch(double from_km, double to_km, bool miles);
// "No heights from mi 102 to mi 119".
std::string no_heights(double from_km, double to_km, bool miles);
// The chance from which a network counts: "70 % and up".
std::string floor(double percent);

// A short name for a position by its near place: "Bend", or beyond 1 mi or km "NE of Bend".
std::string place_title(const places::NearPlace& near, bool miles);

}  // namespace mastwise::words
