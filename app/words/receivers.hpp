#pragma once

#include "core/nmea/fix.hpp"

#include <string>

namespace mastwise::words {

// Why there is no good fix, and what can be done; empty when the fix is good.
std::string fix_trouble(const nmea::Fix& fix);

}  // namespace mastwise::words
