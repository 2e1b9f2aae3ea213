#pragma once

#include "core/logbook/record.hpp"

#include <string>

namespace mastwise {

// The stops as waypoints for maps and other software, oldest first: position, arrival, name and, as
// description, the note and the outcomes. Deleted stops are left out. Source: GPX 1.1, schema of
// the name space http://www.topografix.com/GPX/1/1.
std::string logbook_gpx(const LogbookContent& content);

}  // namespace mastwise
