#include "app/words/times.hpp"

#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/catalog/source_age.hpp"

#include <chrono>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

std::string counted(int count, Phrase one, Phrase many) {
  return count == 1 ? one : fill(many, {{"number", std::to_string(count)}});
}

// "UTC+5:45", "UTC-3".
std::string utc_offset(std::chrono::seconds ahead) {
  const auto minutes = std::chrono::round<std::chrono::minutes>(std::chrono::abs(ahead)).count();
  const char sign = ahead.count() < 0 ? '-' : '+';
  return minutes % 60 == 0 ? fmt::format("UTC{}{}", sign, minutes / 60)
                           : fmt::format("UTC{}{}:{:02}", sign, minutes / 60, minutes % 60);
}

// "18:04", "18:04:30".
std::string hours_of(UtcTime time, const TimeZone& zone) {
  const LocalTime local = local_time(time, zone);
  const std::chrono::hh_mm_ss day_time(std::chrono::floor<std::chrono::seconds>(
      local - std::chrono::floor<std::chrono::days>(local)));
  std::string said =
      fmt::format("{:02}:{:02}", day_time.hours().count(), day_time.minutes().count());
  if (day_time.seconds().count() != 0) said += fmt::format(":{:02}", day_time.seconds().count());
  return said;
}

}  // namespace

std::string age(milliseconds age) {
  const auto& times = phrases().times;
  const double seconds = std::chrono::duration<double>(age).count();
  const auto words = [](Phrase phrase, double number) {
    return fill(phrase, {{"number", fmt::format("{:.0f}", number)}});
  };
  if (seconds < 90.0) return words(times.seconds, seconds);
  if (seconds < 5400.0) return words(times.minutes, seconds / 60.0);
  return words(times.hours, seconds / 3600.0);
}

std::string date(std::chrono::local_days day) {
  const std::chrono::year_month_day date{day};
  return fill(phrases().times.date,
              {{"day", std::to_string(static_cast<unsigned>(date.day()))},
               {"month", phrases().times.months[static_cast<unsigned>(date.month()) - 1]},
               {"year", std::to_string(static_cast<int>(date.year()))}});
}

std::string moment(UtcTime time, const TimeZone& zone) {
  const auto day = std::chrono::floor<std::chrono::days>(local_time(time, zone));
  return fill(
      phrases().times.moment,
      {{"date", date(day)}, {"time", hours_of(time, zone)}, {"zone", zone_name(zone, time)}});
}

std::string clock(UtcTime time, const TimeZone& zone) {
  return hours_of(time, zone) + ' ' + zone_name(zone, time);
}

std::string zone_name(const TimeZone& zone, UtcTime time) {
  const ZonePeriod& period = period_at(zone, time);
  // The tz database has digits, "+0545", where a zone has no short name in use.
  const bool digits = period.short_name.find_first_of("+-0123456789") == 0;
  return digits || period.short_name.empty() ? utc_offset(period.ahead) : period.short_name;
}

std::string zone_caution(const LocalZone& zone, UtcTime now) {
  const auto& times = phrases().times;
  switch (zone.origin) {
    case LocalZone::Origin::Place:
      return {};
    case LocalZone::Origin::Tablet:
      return fill(times.zone_tablet, {{"zone", zone_name(*zone.clocks, now)}});
    case LocalZone::Origin::None:
      return times.zone_unknown;
  }
  return {};
}

std::string data_age(std::string_view date, std::chrono::local_days today) {
  const auto& times = phrases().times;
  const auto age = source_age(date, today);
  if (!age && date.empty()) return times.age_unknown;
  if (!age) return fill(times.source_age_unknown, {{"date", std::string(date)}});
  std::string words;
  if (age->years > 0) words = counted(age->years, times.year, times.years);
  if (age->months > 0) {
    words += (words.empty() ? "" : " ") + counted(age->months, times.month, times.months_old);
  }
  if (words.empty()) words = counted(age->days, times.day, times.days);
  return fill(times.source_age, {{"date", std::string(date)}, {"age", words}});
}

std::string data_caution(std::string_view date, std::chrono::local_days today) {
  const auto age = source_age(date, today);
  if (!age) return {};
  switch (age->freshness) {
    case SourceFreshness::fresh:
      return {};
    case SourceFreshness::ageing:
      return phrases().times.source_ageing;
    case SourceFreshness::stale:
      return phrases().times.source_stale;
  }
  return {};
}

std::string earlier_stop(std::chrono::local_days saved, double away_m, bool miles) {
  return fill(phrases().times.earlier_stop,
              {{"date", date(saved)}, {"distance", distance(away_m, miles)}});
}

}  // namespace mastwise::words
