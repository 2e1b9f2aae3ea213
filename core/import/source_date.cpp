#include "core/import/source_date.hpp"

#include "core/text/words.hpp"

#include <charconv>
#include <chrono>

#include <fmt/format.h>

namespace mastwise {
namespace {

unsigned number(std::string_view digits) {
  unsigned value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

bool is_day(std::string_view date) {
  if (date.size() != 10) return false;
  for (std::size_t i = 0; i < date.size(); ++i) {
    const bool dash = i == 4 || i == 7;
    if (dash ? date[i] != '-' : !words::is_digit(date[i])) return false;
  }
  return std::chrono::year_month_day(std::chrono::year(static_cast<int>(number(date.substr(0, 4)))),
                                     std::chrono::month(number(date.substr(5, 2))),
                                     std::chrono::day(number(date.substr(8, 2))))
      .ok();
}

}  // namespace

std::optional<Error> source_date_fault(std::string_view date) {
  if (date.empty() || is_day(date)) return std::nullopt;
  return Error{.what = fmt::format("\"{}\" is not the date of a source", date),
               .remedy = "write the year, month and day as in 2017-04-13, or leave it out"};
}

}  // namespace mastwise
