#pragma once

#include "core/time.hpp"

#include <chrono>
#include <string>
#include <vector>

namespace mastwise {

// A span in which the clocks of a zone keep one offset.
struct ZonePeriod {
  UtcTime begin;                  // the next period ends it
  std::chrono::seconds ahead{0};  // of UTC, -26 to 26 hours
  std::string short_name;         // "PDT", or "+0545" where the tz database has no letters
  bool operator==(const ZonePeriod&) const = default;
};

// The clocks of a zone as data. The first period also counts for all times before it.
struct TimeZone {
  std::string name;                 // in the tz database: "America/Los_Angeles"
  std::vector<ZonePeriod> periods;  // at least one, by rising begin
  bool operator==(const TimeZone&) const = default;
};

TimeZone utc_zone();

const ZonePeriod& period_at(const TimeZone& zone, UtcTime time);

// What the clocks of the zone show, and their date. A type of its own, so that a date of UTC cannot
// be shown by mistake.
using LocalTime = std::chrono::local_time<milliseconds>;
LocalTime local_time(UtcTime time, const TimeZone& zone);
std::chrono::local_days local_day(UtcTime time, const TimeZone& zone);

// Noon of a day in the zone: the moment for a day that was given without a time.
UtcTime noon_of(std::chrono::local_days day, const TimeZone& zone);

}  // namespace mastwise
