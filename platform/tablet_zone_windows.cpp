#include "platform/system_windows.hpp"
#include "platform/time_zones.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>

#include <windows.h>

namespace mastwise::platform {
namespace {

// Windows describes a change of the clocks by its local time before the change; a year of 0 means
// "the day-th such day of the week in the month, 5 for the last" (SYSTEMTIME in
// TIME_ZONE_INFORMATION).
std::chrono::sys_days day_of_change(const SYSTEMTIME& change, int year) {
  using namespace std::chrono;
  const auto month_of = std::chrono::year(year) / month(change.wMonth);
  if (change.wYear != 0) return sys_days(month_of / day(change.wDay));
  const weekday wanted(change.wDayOfWeek);
  constexpr unsigned kLast = 5;
  if (change.wDay == kLast) return sys_days(month_of / weekday_last(wanted));
  return sys_days(month_of / weekday_indexed(wanted, change.wDay));
}

UtcTime moment_of_change(const SYSTEMTIME& change, int year, std::chrono::seconds ahead_before) {
  using namespace std::chrono;
  const auto local = day_of_change(change, year) + hours(change.wHour) + minutes(change.wMinute) +
                     seconds(change.wSecond);
  return UtcTime(duration_cast<milliseconds>((local - ahead_before).time_since_epoch()));
}

// "-07" or "+0545", as the tz database writes zones without letters: Windows has none.
std::string letters_of(std::chrono::seconds ahead) {
  const auto total = std::chrono::duration_cast<std::chrono::minutes>(ahead).count();
  const auto size = total < 0 ? -total : total;
  const auto two = [](std::int64_t number) {
    return (number < 10 ? "0" : "") + std::to_string(number);
  };
  return (total < 0 ? "-" : "+") + two(size / 60) + (size % 60 == 0 ? "" : two(size % 60));
}

void add_period(TimeZone& zone, UtcTime begin, std::chrono::seconds ahead) {
  if (!zone.periods.empty() && zone.periods.back().ahead == ahead) return;
  zone.periods.push_back({.begin = begin, .ahead = ahead, .short_name = letters_of(ahead)});
}

// The zone's rules of every year, as the system keeps them.
std::optional<TimeZone> zone_of_system() {
  DYNAMIC_TIME_ZONE_INFORMATION zone{};
  if (::GetDynamicTimeZoneInformation(&zone) == TIME_ZONE_ID_INVALID) return std::nullopt;
  TimeZone data{.name = narrow(zone.TimeZoneKeyName), .periods = {}};
  if (data.name.empty()) data.name = narrow(zone.StandardName);
  constexpr int kFirst = 1970, kLast = 2100;
  for (int year = kFirst; year <= kLast; ++year) {
    TIME_ZONE_INFORMATION rules{};
    if (::GetTimeZoneInformationForYear(static_cast<USHORT>(year), &zone, &rules) == 0) {
      return std::nullopt;
    }
    const std::chrono::minutes standard(-(rules.Bias + rules.StandardBias));
    const std::chrono::minutes summer(-(rules.Bias + rules.DaylightBias));
    const auto new_year = UtcTime(std::chrono::sys_days(std::chrono::year(year) / 1 / 1));
    if (rules.StandardDate.wMonth == 0) {
      add_period(data, new_year, standard);
      continue;
    }
    const UtcTime forward = moment_of_change(rules.DaylightDate, year, standard);
    const UtcTime back = moment_of_change(rules.StandardDate, year, summer);
    // South of the equator the year begins in summer.
    const bool starts_in_summer = back < forward;
    if (data.periods.empty()) add_period(data, new_year, starts_in_summer ? summer : standard);
    add_period(data, std::min(forward, back), starts_in_summer ? standard : summer);
    add_period(data, std::max(forward, back), starts_in_summer ? summer : standard);
  }
  return data;
}

}  // namespace

std::optional<TimeZone> tablet_zone() {
  if (const char* name = std::getenv("TZ"); name != nullptr && *name != '\0') {
    return time_zone(*name == ':' ? name + 1 : name);
  }
  return zone_of_system();
}

}  // namespace mastwise::platform
