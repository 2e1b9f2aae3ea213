#pragma once

#include "core/sweep/sweep.hpp"

#include <string_view>
#include <vector>

namespace mastwise::aim {

// A sweep from delimited text with a heading line. Columns, in any order and whatever case:
// "heading_deg", 0 to 360, clockwise seen from above; "reading" in the meter's units, or empty,
// "-" or "nothing" where there was no lock; where wanted "waiting_s", 0 or more, the seconds
// between turning and reading. Other columns are passed over, as are lines that begin with '#'.
// Refuses, with line and remedy: no heading line, a column twice or missing, a cell that is no such
// number, no rows, more than 360 rows.
Result<std::vector<Reading>> read_sweep(std::string_view text);

}  // namespace mastwise::aim
