#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <string_view>

namespace mastwise {

// Reads a delimited table (a header line, then a row for each station) by a mapping. A row that
// cannot be read is kept in `rejected` with its line and the reason, and the rest is read. Columns
// that the mapping does not name become notes. A second row of the same station is rejected.
// An error when no row could be read at all: the text is not UTF-8 or ISO 8859-1, has no header, or
// lacks a column that the mapping names (the message lists those there are).
Result<StationTable> read_station_table(std::string_view text, const TableMapping& mapping);

}  // namespace mastwise
