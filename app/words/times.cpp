#include "app/words/times.hpp"

#include "app/words/phrases.hpp"
#include "core/catalog/source_age.hpp"

#include <chrono>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

std::string counted(int count, Phrase one, Phrase many) {
  return count == 1 ? one : fill(many, {{"number", std::to_string(count)}});
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

std::string date(UtcTime time) {
  const std::chrono::year_month_day day{std::chrono::floor<std::chrono::days>(time)};
  return fill(phrases().times.date,
              {{"day", std::to_string(static_cast<unsigned>(day.day()))},
               {"month", phrases().times.months[static_cast<unsigned>(day.month()) - 1]},
               {"year", std::to_string(static_cast<int>(day.year()))}});
}

std::string data_age(std::string_view date, UtcTime now) {
  const auto& times = phrases().times;
  const auto age = source_age(date, now);
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

std::string data_caution(std::string_view date, UtcTime now) {
  const auto age = source_age(date, now);
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

std::string earlier_stop(UtcTime saved, double away_m, bool miles) {
  return fill(phrases().times.earlier_stop,
              {{"date", date(saved)}, {"distance", distance(away_m, miles)}});
}

}  // namespace mastwise::words
