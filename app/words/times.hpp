#pragma once

#include "core/time.hpp"

#include <string>
#include <string_view>

// Dates and ages as a person reads them.
namespace mastwise::words {

std::string age(milliseconds age);  // "3 s", "4 min", "2 h"
std::string date(UtcTime time);     // "2 July 2026"
// The age of a table: "of 2017-04-13, 9 years 7 months old"; "age unknown".
std::string data_age(std::string_view date, UtcTime now);
// The risk of aiming by a table of this age; empty if it is recent.
std::string data_caution(std::string_view date, UtcTime now);

// "The stop of 2 July 2026, 212 mi from here".
std::string earlier_stop(UtcTime saved, double away_m, bool miles);

}  // namespace mastwise::words
