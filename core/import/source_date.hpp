#pragma once

#include "core/result.hpp"

#include <optional>
#include <string_view>

namespace mastwise {

// The fault of a source's date, unless it is empty (unknown) or a day of the calendar written as in
// "2017-04-13" (ISO 8601).
std::optional<Error> source_date_fault(std::string_view date);

}  // namespace mastwise
