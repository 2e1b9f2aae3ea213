#pragma once

#include "core/time.hpp"

#include <cstdlib>
#include <string>

namespace mastwise::test {

// "2026-07-02T18:00:00Z", as the reference tables write it.
inline UtcTime utc(const std::string& text) {
  const auto number = [&](std::size_t at, std::size_t size) {
    return std::atoi(text.substr(at, size).c_str());
  };
  const std::chrono::year_month_day day{std::chrono::year(number(0, 4)),
                                        std::chrono::month(static_cast<unsigned>(number(5, 2))),
                                        std::chrono::day(static_cast<unsigned>(number(8, 2)))};
  return UtcTime(std::chrono::sys_days(day)) + std::chrono::hours(number(11, 2)) +
         std::chrono::minutes(number(14, 2)) + std::chrono::seconds(number(17, 2));
}

}  // namespace mastwise::test
