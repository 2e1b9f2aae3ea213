#pragma once

#include "core/angles/bearing.hpp"
#include "core/channels/channels.hpp"
#include "core/gear/gear.hpp"

#include <vector>

namespace mastwise::gear {

// How far below the axis an antenna in place hears at most in any direction, dB: what trees,
// buildings and the rig scatter arrives through the rest of its pattern. Recommendation ITU-R
// BT.419-3 counts on 6 dB in band I, 12 in band III and 16 in bands IV and V at most locations in
// built-up areas, and slightly more in open country [from memory]; this allows 4 dB more [own
// choice].
double deepest_in_place_db(Band band);

// The antenna with measured patterns no deeper than that. Typical patterns stay: their floors are
// already those of antennas in use.
Antenna in_place(Antenna antenna);

// A direction in which an antenna hears less than around it.
struct PatternNull {
  Turn middle;             // off the axis
  double width_deg = 0.0;  // within 3 dB of its deepest point
  double depth_db = 0.0;   // of that point below the axis
};

// The nulls of a measured pattern, clockwise from the axis: at least 10 dB below the axis, and on
// both sides the response rises by 6 dB before it gets any deeper [own choice]. None for a typical
// pattern, whose nulls nobody has measured.
std::vector<PatternNull> nulls(const Pattern& pattern);

}  // namespace mastwise::gear
