#pragma once

#include "core/import/suspicion.hpp"

#include <string>

namespace mastwise::words {

// "longitude counted up to the other side", as a way to read a table's coordinates.
std::string coordinate_reading(CoordinateReading reading);

// Why a table's positions look wrong, and which other reading would explain it.
std::string suspicion(const Suspicion& suspicion);

}  // namespace mastwise::words
