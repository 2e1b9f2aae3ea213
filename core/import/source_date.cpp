#include "core/import/source_date.hpp"

#include "core/text/iso_time.hpp"

#include <fmt/format.h>

namespace mastwise {
std::optional<Error> source_date_fault(std::string_view date) {
  if (date.empty() || parse_iso_day(date)) return std::nullopt;
  return Error{.what = fmt::format("\"{}\" is not the date of a source", date),
               .remedy = "write the year, month and day as in 2017-04-13, or leave it out"};
}

}  // namespace mastwise
