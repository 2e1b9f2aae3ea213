#pragma once

#include "core/time.hpp"

namespace mastwise::platform {

// The machine's monotonic clock. Any thread.
Monotonic monotonic_now();

// The machine's date and time; it may be wrong on a tablet without a network. Any thread.
UtcTime utc_now();

}  // namespace mastwise::platform
