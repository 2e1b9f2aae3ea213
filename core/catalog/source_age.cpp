#include "core/catalog/source_age.hpp"

#include "core/import/source_date.hpp"

#include <charconv>
#include <chrono>

namespace mastwise {
namespace {

constexpr int kAgeing_years = 1;
constexpr int kStale_years = 3;

int number(std::string_view digits) {
  int value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

}  // namespace

std::optional<SourceAge> source_age(std::string_view date, UtcTime now) {
  if (date.empty() || source_date_fault(date)) return std::nullopt;
  const std::chrono::year_month_day made{
      std::chrono::year(number(date.substr(0, 4))),
      std::chrono::month(static_cast<unsigned>(number(date.substr(5, 2)))),
      std::chrono::day(static_cast<unsigned>(number(date.substr(8, 2))))};
  const auto today = std::chrono::floor<std::chrono::days>(now);
  const std::chrono::year_month_day day{today};
  const auto days = (today - std::chrono::sys_days(made)).count();
  if (days < 0) return std::nullopt;
  int months = (static_cast<int>(day.year()) - static_cast<int>(made.year())) * 12 +
               static_cast<int>(static_cast<unsigned>(day.month())) -
               static_cast<int>(static_cast<unsigned>(made.month()));
  if (day.day() < made.day()) --months;
  SourceAge age{.years = months / 12, .months = months % 12, .days = static_cast<int>(days)};
  age.freshness = age.years >= kStale_years    ? SourceFreshness::stale
                  : age.years >= kAgeing_years ? SourceFreshness::ageing
                                               : SourceFreshness::fresh;
  return age;
}

}  // namespace mastwise
