#pragma once

#include "core/angles/bearing.hpp"

namespace mastwise {

// Bearing<Dial> counts from the zero of the dial used to turn the antenna: a compass card with
// nearby iron, the ring of a ceiling handle, marks on the roof. Clockwise seen from above: negate
// the readings of a ring that counts the other way. Only a DialCorrection converts it to true
// north.
struct Dial;

// The reading of a compass along a magnetic bearing without deviation, and the inverse.
inline Bearing<Dial> on_compass(Bearing<Magnetic> bearing) {
  return Bearing<Dial>::degrees(bearing.degrees());
}
inline Bearing<Magnetic> as_magnetic(Bearing<Dial> heading) {
  return Bearing<Magnetic>::degrees(heading.degrees());
}

// The antenna's direction by a calibrated handle and the rig heading, before a correction shows
// their common error.
inline Bearing<Dial> on_handle(Bearing<True> nominal) {
  return Bearing<Dial>::degrees(nominal.degrees());
}

}  // namespace mastwise
