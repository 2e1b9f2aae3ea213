#include "core/zones/time_zone.hpp"

#include <algorithm>

namespace mastwise {

TimeZone utc_zone() {
  return {.name = "UTC", .periods = {{.begin = {}, .short_name = "UTC"}}};
}

const ZonePeriod& period_at(const TimeZone& zone, UtcTime time) {
  const auto next = std::upper_bound(
      zone.periods.begin(), zone.periods.end(), time,
      [](UtcTime moment, const ZonePeriod& period) { return moment < period.begin; });
  return next == zone.periods.begin() ? zone.periods.front() : *(next - 1);
}

LocalTime local_time(UtcTime time, const TimeZone& zone) {
  return LocalTime(time.time_since_epoch() + period_at(zone, time).ahead);
}

std::chrono::local_days local_day(UtcTime time, const TimeZone& zone) {
  return std::chrono::floor<std::chrono::days>(local_time(time, zone));
}

UtcTime noon_of(std::chrono::local_days day, const TimeZone& zone) {
  const UtcTime as_if_utc(day.time_since_epoch() + std::chrono::hours(12));
  // The offset half a day around it is that of noon, but for zones that change at noon.
  return as_if_utc - period_at(zone, as_if_utc - period_at(zone, as_if_utc).ahead).ahead;
}

}  // namespace mastwise
