#pragma once

#include "core/zones/time_zone.hpp"

#include <optional>
#include <string>

// The tz database: the system's, as its package keeps it up to date, or the one in Mastwise's
// assets where the system has none (start_program). No call opens a connection.
namespace mastwise::platform {

// The clocks of a zone from 1970 to 2100 by its name, "America/Los_Angeles"; std::nullopt if the
// system does not know it. Any thread.
std::optional<TimeZone> time_zone(const std::string& name);

// The zone that the tablet is set to: that of the variable TZ, else the system's setting.
// std::nullopt if it cannot be read. Any thread, while none changes the variables. One source file
// for each system.
std::optional<TimeZone> tablet_zone();

}  // namespace mastwise::platform
