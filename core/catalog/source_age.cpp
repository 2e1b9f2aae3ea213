#include "core/catalog/source_age.hpp"

#include "core/text/iso_time.hpp"

#include <chrono>

namespace mastwise {
namespace {

constexpr int kAgeing_years = 1;
constexpr int kStale_years = 3;

}  // namespace

std::optional<SourceAge> source_age(std::string_view date, std::chrono::local_days today) {
  const auto made_on = parse_iso_day(date);
  if (!made_on) return std::nullopt;
  const std::chrono::year_month_day made{*made_on};
  const std::chrono::year_month_day day{today};
  const auto days = (today.time_since_epoch() - made_on->time_since_epoch()).count();
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
