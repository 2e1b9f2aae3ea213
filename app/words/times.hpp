#pragma once

#include "core/time.hpp"
#include "core/zones/local_zone.hpp"
#include "core/zones/time_zone.hpp"

#include <chrono>
#include <string>
#include <string_view>

// Dates and ages as a person reads them.
namespace mastwise::words {

std::string age(milliseconds age);              // "3 s", "4 min", "2 h"
std::string date(std::chrono::local_days day);  // "2 July 2026"
// "2 July 2026, 18:04 PDT", with the seconds if they are not zero.
std::string moment(UtcTime time, const TimeZone& zone);
// "18:04 PDT", with the seconds if they are not zero.
std::string clock(UtcTime time, const TimeZone& zone);
// The zone's short name at a time: "PDT", or "UTC+5:45" where it has none.
std::string zone_name(const TimeZone& zone, UtcTime time);
// The age of a table: "of 2017-04-13, 9 years 7 months old"; "age unknown".
std::string data_age(std::string_view date, std::chrono::local_days today);
// The risk of aiming by a table of this age; empty if it is recent.
std::string data_caution(std::string_view date, std::chrono::local_days today);

// Whose clocks the dates follow if they are not those of the position: "No time zone known here;
// dates follow the tablet's clock, PDT"; empty if they are.
std::string zone_caution(const LocalZone& zone, UtcTime now);

// "The stop of 2 July 2026, 212 mi from here".
std::string earlier_stop(std::chrono::local_days saved, double away_m, bool miles);

}  // namespace mastwise::words
