#pragma once

#include "core/sweep/sweep.hpp"

#include <string_view>
#include <vector>

namespace mastwise::aim {

// A sweep from delimited text with a heading line. Columns, in any order and any case:
// "heading_deg", 0 to 360, clockwise seen from above; "reading" in the meter's units, or empty, "-"
// or "nothing" without lock; optional "waiting_s", 0 or more, the seconds between turning and
// reading. Other columns and lines that begin with '#' are ignored. Errors, with line and remedy:
// no heading line, a repeated or missing column, an invalid number, no rows, more than 360 rows.
Result<std::vector<Reading>> read_sweep(std::string_view text);

}  // namespace mastwise::aim
