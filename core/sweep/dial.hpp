#pragma once

#include "core/angles/bearing.hpp"

namespace mastwise {

// Bearing<Dial> counts from the zero of whatever the person reads when turning the antenna: a
// compass card with its own needle and iron about it, the ring of a ceiling handle, marks on the
// roof. Clockwise seen from above: what is read on a ring that counts the other way is negated
// first. Only a DialCorrection leads from it to true north.
struct Dial;

// What a compass shows along a magnetic bearing while nothing but the earth draws its needle, and
// back.
inline Bearing<Dial> on_compass(Bearing<Magnetic> bearing) {
  return Bearing<Dial>::degrees(bearing.degrees());
}
inline Bearing<Magnetic> as_magnetic(Bearing<Dial> heading) {
  return Bearing<Magnetic>::degrees(heading.degrees());
}

// Where a calibrated handle and the rig heading say that the antenna points, before a correction
// shows by how much they are off together.
inline Bearing<Dial> on_handle(Bearing<True> nominal) {
  return Bearing<Dial>::degrees(nominal.degrees());
}

}  // namespace mastwise
