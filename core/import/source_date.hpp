#pragma once

#include "core/result.hpp"

#include <optional>
#include <string_view>

namespace mastwise {

// Why a source's date cannot be one: it is neither empty (unknown) nor a day of the calendar
// written as in "2017-04-13" (ISO 8601).
std::optional<Error> source_date_fault(std::string_view date);

}  // namespace mastwise
