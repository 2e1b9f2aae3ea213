#pragma once

#include "core/angles/bearing.hpp"

namespace mastwise {

// Bearing<Dial> counts from the zero of whatever the person reads when turning the antenna: a
// compass card with its own needle and iron about it, the ring of a ceiling handle, marks on the
// roof. Clockwise seen from above: what is read on a ring that counts the other way is negated
// first. Only a DialCorrection leads from it to true north.
struct Dial;

}  // namespace mastwise
