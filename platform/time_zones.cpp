#include "platform/time_zones.hpp"

#include <utility>

#include <absl/time/time.h>

namespace mastwise::platform {
namespace {

ZonePeriod period_from(const absl::TimeZone& zone, absl::Time begin) {
  const auto info = zone.At(begin);
  return {.begin = UtcTime(milliseconds(absl::ToUnixMillis(begin))),
          .ahead = std::chrono::seconds(info.offset),
          .short_name = info.zone_abbr};
}

TimeZone as_data(const absl::TimeZone& zone, std::string name) {
  const absl::Time end = absl::FromCivil(absl::CivilDay(2101, 1, 1), absl::UTCTimeZone());
  absl::Time at = absl::UnixEpoch();
  TimeZone data{.name = std::move(name), .periods = {period_from(zone, at)}};
  absl::TimeZone::CivilTransition next;
  while (zone.NextTransition(at, &next)) {
    at = zone.At(next.to).trans;
    if (at >= end) break;
    data.periods.push_back(period_from(zone, at));
  }
  return data;
}

}  // namespace

std::optional<TimeZone> time_zone(const std::string& name) {
  absl::TimeZone zone;
  if (name.empty() || !absl::LoadTimeZone(name, &zone)) return std::nullopt;
  return as_data(zone, name);
}

}  // namespace mastwise::platform
