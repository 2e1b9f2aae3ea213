#pragma once

#include "core/angles/bearing.hpp"

#include <string>

namespace mastwise {

// A rig angle in plain words, to the nearest 15 degrees: an hour of the clock, twelve at the nose
// as seen from above, and a place on the rig. 45 degrees is "half past one, off the right front
// corner". Right and left are those of a person who sits in the rig and looks toward its nose;
// within 7.5 degrees of the nose or tail neither is said. A corner stands for the diagonal,
// whatever the rig's length.
std::string rig_words(RigAngle angle);

}  // namespace mastwise
