#pragma once

#include "core/time.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise {

// "2026-07-02T18:04:05.250Z"; a zero fraction is left out [ISO 8601, RFC 3339].
std::string iso_utc(UtcTime time);

// The same without the fraction, rounded down; and the day alone: "2026-07-02".
std::string iso_utc_seconds(UtcTime time);
std::string iso_day(UtcTime time);
std::string iso_day(std::chrono::local_days day);  // of a place

// A day as iso_day() writes it; std::nullopt for any other text.
std::optional<std::chrono::sys_days> parse_iso_day(std::string_view text);

// A date with a time of day by RFC 3339: seconds with or without a fraction (read to the
// millisecond), "Z" or an offset from UTC. Without either the time is UTC, as in GPX. Second 60 is
// the first of the next minute. std::nullopt for any other text.
std::optional<UtcTime> parse_iso_utc(std::string_view text);

}  // namespace mastwise
